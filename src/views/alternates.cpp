#include "fingerturn/compare.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

/// Calls `visit` with every note.
template <typename AnyScore, typename Visit>
void for_notes(AnyScore& score, const Visit& visit) {
  for (auto& passage : score.passages) {
    for (auto& line : passage.lines) {
      for (auto& event : line.events) {
        for (auto& note : event.notes) visit(note);
      }
    }
  }
}

}  // namespace

std::vector<Score> alternate_fingerings(const Score& score) {
  std::size_t most = 0;
  for_notes(score, [&](const Note& note) { most = std::max(most, note.alternatives.size()); });
  // More would be fingers that are offered twice.
  most = std::min<std::size_t>(most, kFifth - kThumb);
  std::vector<Score> all;
  for (std::size_t number = 0; number < most; ++number) {
    for_notes(all.emplace_back(score), [number](Note& note) {
      if (number >= note.alternatives.size()) return;
      note.finger = note.alternatives[number];
      note.changes_to.clear();
      note.suggested = false;
    });
  }
  return all;
}

}  // namespace fingerturn
