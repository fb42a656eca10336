#include "rules/strike.hpp"

#include "rules/gesture.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

void widen(OuterFingers& fingers, Finger finger) {
  if (!fingers.known()) {
    fingers = {finger, finger};
    return;
  }
  fingers.lowest = std::min(fingers.lowest, finger);
  fingers.highest = std::max(fingers.highest, finger);
}

Finger last_finger(const Line& line, std::size_t event, const Note& note) {
  if (note.tied) return fingers_on_key(line, event, note).back();
  return note.changes_to.empty() ? *note.finger : note.changes_to.back();
}

Strike strike_of(const Line& line, std::size_t at) {
  Strike strike;
  strike.event = at;
  bool complete = true;
  for (const Note& note : line.events[at].notes) {
    if (note.held) continue;
    ++strike.note_count;
    strike.key = midi_number(note.pitch);
    if (!note.finger) {
      complete = false;
      continue;
    }
    widen(strike.arrival, *note.finger);
    widen(strike.departure, last_finger(line, at, note));
  }
  if (!complete) strike.arrival = strike.departure = {};
  return strike;
}

}  // namespace

std::vector<Strike> strikes_of(const Line& line) {
  std::vector<Strike> strikes;
  strikes.reserve(line.events.size());
  bool separated = false;
  for (std::size_t at = 0; at < line.events.size(); ++at) {
    if (at > 0) separated |= ends_gesture(line.events[at - 1], line.events[at]);
    if (line.events[at].struck_count() == 0) continue;
    strikes.push_back(strike_of(line, at));
    strikes.back().separated = separated;
    separated = false;
  }
  return strikes;
}

}  // namespace fingerturn
