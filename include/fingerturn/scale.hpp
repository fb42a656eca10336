#pragma once

#include "fingerturn/score.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Scales and arpeggios with the fingers that handbooks give them. The fingers stand in one table,
/// src/scales/fingers.cpp, from memory; docs/fingering.md names the books.
///
///     ScaleResult result = handbook_scale("B-flat major", {.hand = Hand::left, .octaves = 2});
///     if (!result.ok()) return fail(result.problem);
///     std::cout << write_passage(result.score);
namespace fingerturn {

enum class ScaleDirection : std::uint8_t { up, down, up_and_down };

/// The most octaves that can be asked for.
inline constexpr int kMostScaleOctaves = 4;

struct ScaleOptions {
  std::optional<Hand> hand = std::nullopt;  ///< none: both hands, the left an octave below
  int octaves = 1;                          ///< from 1 to kMostScaleOctaves
  ScaleDirection direction = ScaleDirection::up;
  /// The first note that is played, by the right hand where both play: a keynote or root of the
  /// scale as it is spelled. None: a middle register.
  std::optional<Pitch> from = std::nullopt;
};

struct ScaleResult {
  /// One passage in eighth notes, its remarks whole sentences on where the fingers come from and
  /// what other handbooks have; nothing where there is a problem.
  Score score;
  /// Why there is no such scale, for a person, without a line feed at its end; else empty.
  std::string problem;
  /// The name is none, and no other comes near; handbook_scale_names() has them all.
  bool is_unknown = false;

  [[nodiscard]] bool ok() const noexcept { return problem.empty(); }
};

/// A scale or arpeggio by the name that a musician gives it, such as "Bb major", "F sharp harmonic
/// minor", "C chromatic", "E-flat major arpeggio" or "G dominant seventh". Any bytes may come in.
ScaleResult handbook_scale(std::string_view name, const ScaleOptions& options = {});

/// The full names of all of them, by kind and then from the flattest to the sharpest.
std::vector<std::string> handbook_scale_names();

}  // namespace fingerturn
