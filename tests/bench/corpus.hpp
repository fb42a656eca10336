#pragma once

#include "fingering/terms.hpp"
#include "fingerturn/score.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

/// Scores with printed fingers, and how many of these a model meets.
namespace fingerturn::bench {

struct Piece {
  std::string name;           ///< of the file
  std::string composer;       ///< what stands before the first dash of the name
  bool is_set_aside = false;  ///< nothing is fitted to it, and no term chosen by it
  Score score;
};

/// Reads MusicXML files; what cannot be read is named on standard error and left out. One in five,
/// by a sum over the file's name (FNV-1a), is set aside.
std::vector<Piece> read_corpus(const std::vector<std::string>& paths);

/// Whether a note counts: it is struck and has a printed finger.
bool is_printed(const Note& note) noexcept;

/// The line with only those printed fingers that `keep` chooses. It is asked for each note that
/// counts, in their order.
Line with_printed(Line line, const std::function<bool()>& keep);

/// Printed fingers that were hidden, and how many of them the model met.
struct Met {
  std::int64_t met = 0;
  std::int64_t hidden = 0;

  Met& operator+=(const Met& other) noexcept;
  [[nodiscard]] double percent() const noexcept;
};

/// Of a piece, by hand (right first) and by what is struck together: single notes first, then
/// chords.
struct MetByKind {
  std::array<std::array<Met, 2>, 2> kinds;

  MetByKind& operator+=(const MetByKind& other) noexcept;
  [[nodiscard]] Met all() const noexcept;
  [[nodiscard]] Met of_hand(std::size_t hand) const noexcept;
  [[nodiscard]] Met of_kind(std::size_t kind) const noexcept;
};

/// With all printed fingers hidden.
MetByKind met_with_none(const Piece& piece, const Model& model);
/// With a random half of them given; the sum over seeds 1 to 5.
MetByKind met_with_half(const Piece& piece, const Model& model);

}  // namespace fingerturn::bench
