#include "rules/strike.hpp"

#include "rules/turn/level.hpp"
#include "rules/turn/side.hpp"

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

/// Goes through the silent changes on the keys of a strike in the order in which they are made.
class Changes {
 public:
  Changes(const Line& line, Strike& strike) : line_(line), strike_(strike) {
    for (const Note& note : line.events[strike.event].notes) {
      if (!note.held) keys_.push_back({midi_number(note.pitch), *note.finger, note.tied});
    }
  }

  void go() {
    const Event& struck = line_.events[strike_.event];
    find_notes(struck, false);
    for (std::size_t change = 1; change <= most_changes(); ++change) change_to(change);
    keep_ties();
    // Fingers on tied continuations count as long as nothing else is struck.
    for (std::size_t i = strike_.event + 1; i < line_.events.size() && is_tied(); ++i) {
      const Event& event = line_.events[i];
      if (event.is_rest() || event.struck_count() > 0) break;
      find_notes(event, true);
      // There the finger itself is the first of the changes.
      for (std::size_t change = 0; change <= most_changes(); ++change) change_to(change);
      keep_ties();
    }
  }

 private:
  struct OnKey {
    int key = 0;
    Finger finger = 0;
    bool tied = false;
    const Note* note = nullptr;  ///< what the event that is looked at has for the key
  };

  [[nodiscard]] bool is_tied() const { return std::ranges::any_of(keys_, &OnKey::tied); }

  void find_notes(const Event& event, bool held) {
    for (OnKey& on_key : keys_) {
      const auto note = std::ranges::find_if(event.notes, [&](const Note& each) {
        return each.held == held && midi_number(each.pitch) == on_key.key;
      });
      const bool counts = note != event.notes.end() && (!held || on_key.tied);
      on_key.note = counts ? &*note : nullptr;
    }
  }

  [[nodiscard]] std::size_t most_changes() const {
    std::size_t most = 0;
    for (const OnKey& on_key : keys_) {
      if (on_key.note != nullptr) most = std::max(most, on_key.note->changes_to.size());
    }
    return most;
  }

  /// Change 0 is the finger that is written first.
  void change_to(std::size_t change) {
    OuterFingers now;
    for (OnKey& on_key : keys_) {
      const Note* note = on_key.note;
      if (note != nullptr && change == 0) on_key.finger = note->finger.value_or(on_key.finger);
      if (note != nullptr && change > 0 && change <= note->changes_to.size()) {
        on_key.finger = note->changes_to[change - 1];
      }
      widen(now, on_key.finger);
    }
    const std::optional<Side> side = side_of(step_between(strike_.departure, now));
    if (!strike_.first_change) strike_.first_change = side;
    if (side) strike_.last_change = side;
    strike_.departure = now;
  }

  void keep_ties() {
    for (OnKey& on_key : keys_) {
      if (on_key.note != nullptr) on_key.tied = on_key.note->tied;
    }
  }

  const Line& line_;
  Strike& strike_;
  std::vector<OnKey> keys_;
};

/// Fills in what is struck; made in its place, since copying it would cost as much again.
void set_strike(const Line& line, std::size_t at, Strike& strike) {
  strike.event = at;
  strike.open_ended = line.events[at].ornament != Ornament::none;
  bool complete = true;
  bool changes = false;
  OuterFingers arrival;
  for (const Note& note : line.events[at].notes) {
    if (note.held) continue;
    strike.top_key = midi_number(note.pitch);
    if (++strike.note_count == 1) strike.key = strike.top_key;
    complete = complete && note.finger.has_value();
    if (!note.finger) continue;
    widen(arrival, *note.finger);
    changes = changes || note.tied || !note.changes_to.empty();
  }
  if (!complete) return;
  strike.arrival = strike.departure = arrival;
  if (changes) Changes(line, strike).go();
}

}  // namespace

bool StrikeReader::next(std::vector<Strike>& strikes) {
  strikes.clear();
  const std::vector<Event>& events = line_.events;
  for (; at_ < events.size(); ++at_) {
    if (at_ > 0) separated_ |= ends_gesture(events[at_ - 1], events[at_]);
    if (events[at_].struck_count() == 0) continue;
    if (separated_ && !strikes.empty()) break;
    Strike& strike = strikes.emplace_back();
    set_strike(line_, at_, strike);
    strike.separated = separated_;
    separated_ = false;
  }
  set_levels(line_, strikes);
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
