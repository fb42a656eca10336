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

/// How far above the left hand's note the right hand's is, octaves left out: on the same degree of
/// the scale or so many degrees above it. In chromatic scales a third is a minor one, a sixth a
/// major one.
enum class HandsApart : std::uint8_t { octave, third, sixth, tenth };

/// What each hand plays at a time.
enum class ScaleNotes : std::uint8_t { single, octaves, thirds, sixths };

/// The most octaves that can be asked for.
inline constexpr int kMostScaleOctaves = 4;

struct ScaleOptions {
  std::optional<Hand> hand = std::nullopt;  ///< none: both hands, the left an octave below
  int octaves = 1;                          ///< from 1 to kMostScaleOctaves
  ScaleDirection direction = ScaleDirection::up;
  /// The first note that is played, of double notes the lower: the keynote or the root as it is
  /// spelled, or the lowest note of an inversion. Where both hands play it is the right hand's, but
  /// a third or a tenth apart the left hand's, which has the keynote there. None: a middle
  /// register.
  std::optional<Pitch> from = std::nullopt;
  int inversion = 0;  ///< of arpeggios: 1, 2, of sevenths 3; 0 is root position
  /// Both hands begin on the same key, in double notes with an octave from one lower note to the
  /// other, and move apart; falling they come together, up and down they return.
  bool contrary = false;
  HandsApart apart = HandsApart::octave;  ///< of scales in both hands
  ScaleNotes notes = ScaleNotes::single;
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
