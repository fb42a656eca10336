#include "rules/strike.hpp"

#include "rules/turn/gesture.hpp"

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

/// Fills in what is struck; made in its place, since copying it would cost as much again.
void set_strike(const Line& line, std::size_t at, Strike& strike) {
  strike.event = at;
  bool complete = true;
  OuterFingers arrival;
  OuterFingers departure;
  for (const Note& note : line.events[at].notes) {
    if (note.held) continue;
    ++strike.note_count;
    strike.key = midi_number(note.pitch);
    if (!note.finger) {
      complete = false;
      continue;
    }
    widen(arrival, *note.finger);
    widen(departure, last_finger(line, at, note));
  }
  if (!complete) return;
  strike.arrival = arrival;
  strike.departure = departure;
}

}  // namespace

bool StrikeReader::next(std::vector<Strike>& strikes) {
  strikes.clear();
  const std::vector<Event>& events = line_.events;
  for (; at_ < events.size(); ++at_) {
    if (at_ > 0) separated_ |= ends_gesture(events[at_ - 1], events[at_]);
    if (events[at_].struck_count() == 0) continue;
    if (separated_ && !strikes.empty()) return true;
    Strike& strike = strikes.emplace_back();
    set_strike(line_, at_, strike);
    strike.separated = separated_;
    separated_ = false;
  }
  return !strikes.empty();
}

std::vector<Strike> strikes_of(const Line& line) {
  std::vector<Strike> strikes;
  std::vector<Strike> up_to_rest;
  StrikeReader reader(line);
  while (reader.next(up_to_rest)) {
    strikes.insert(strikes.end(), up_to_rest.begin(), up_to_rest.end());
  }
  return strikes;
}

}  // namespace fingerturn
