#include "rules/turn/level.hpp"

#include "score/struck_notes.hpp"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace fingerturn {
namespace {

/// An event by itself.
Level level_alone(const Strike& strike) noexcept {
  constexpr std::size_t kFewestInChord = 3;
  constexpr int kOctave = 12;
  if (strike.note_count >= kFewestInChord) return Level::chord;
  if (strike.note_count < 2) return Level::no;
  if (strike.arrival.lowest == kThumb && strike.arrival.highest == kFifth) {
    return Level::outer_fingers;
  }
  return strike.top_key - strike.key >= kOctave ? Level::octave : Level::no;
}

/// Whether the finger that is on the key at last may be the one that strikes it again.
bool may_be_same_finger(const Line& line, std::size_t event, const Note& before, const Note& now) {
  if (!before.finger || !now.finger) return true;
  return fingers_on_key(line, event, before).back() == *now.finger;
}

/// Whether a double note strikes the keys of the one before it again.
bool repeats(const Line& line, const Strike& before, const Strike& now) {
  const bool same_keys = before.note_count == 2 && now.note_count == 2 && before.key == now.key &&
                         before.top_key == now.top_key;
  if (!same_keys) return false;
  const std::vector<const Note*> notes_before = struck_notes(line.events[before.event]);
  const std::vector<const Note*> notes = struck_notes(line.events[now.event]);
  return may_be_same_finger(line, before.event, *notes_before[0], *notes[0]) &&
         may_be_same_finger(line, before.event, *notes_before[1], *notes[1]);
}

}  // namespace

void set_levels(const Line& line, std::span<Strike> strikes) {
  for (Strike& strike : strikes) strike.level = level_alone(strike);
  for (std::size_t i = 1; i < strikes.size(); ++i) {
    if (!repeats(line, strikes[i - 1], strikes[i])) continue;
    for (Strike& strike : strikes.subspan(i - 1, 2)) {
      if (!strike.is_level()) strike.level = Level::repeated;
    }
  }
}

}  // namespace fingerturn
