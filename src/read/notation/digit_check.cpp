#include "read/notation/digit_check.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdlib>
#include <optional>

namespace fingerturn {
namespace {

bool could_be_a_finger(const Note& note) {
  return !note.finger && note.pitch.octave >= kThumb && note.pitch.octave <= kFifth;
}

bool looks_misplaced(const Line& line) {
  constexpr int kOctave = 12;  // semitones
  constexpr std::size_t kFewestSteps = 3;
  std::size_t steps = 0;
  std::size_t wide = 0;
  std::optional<int> before;
  for (const Event& event : line.events) {
    if (!std::all_of(event.notes.begin(), event.notes.end(), could_be_a_finger)) return false;
    if (event.notes.size() != 1) continue;
    const int key = midi_number(event.notes[0].pitch);
    if (before) {
      ++steps;
      if (std::abs(key - *before) > kOctave) ++wide;
    }
    before = key;
  }
  return steps >= kFewestSteps && 2 * wide > steps;
}

}  // namespace

void check_digits(const Passage& passage, Reporter& reporter) {
  for (const Line& line : passage.lines) {
    if (!looks_misplaced(line)) continue;
    reporter.report("digits", line.events.front().span,
                    "expected steps within an octave, found wider ones at most notes, and no "
                    "finger",
                    "if the numbers are fingers, they stand after a colon: C4:1 D:2 E:3");
  }
}

}  // namespace fingerturn
