#include "rules/turn/held_key.hpp"

#include "hand/spans.hpp"

#include <algorithm>
#include <cstdlib>

namespace fingerturn {
namespace {

Finger last_finger(const Note& note) {
  return note.changes_to.empty() ? *note.finger : note.changes_to.back();
}

bool strikes(const Event& event, const Pitch& pitch) {
  return std::ranges::any_of(event.notes, [&](const Note& note) {
    return !note.held && midi_number(note.pitch) == midi_number(pitch);
  });
}

std::optional<Fraction> end_of(const Event& event, const Note& note) {
  const std::optional<Fraction> value = note.lasts ? note.lasts : event.duration;
  return event.onset && value ? sum(*event.onset, *value) : std::nullopt;
}

/// Most notes are: what is played next begins when their time is over.
bool is_over_when_next_begins(const Event& event, const Note& note) noexcept {
  return !note.tied && !note.lasts && !event.rolls_on;
}

/// Whether the hand cannot hold a key while it strikes: it is further away than any hand reaches,
/// or its finger plays another and does not take both.
bool is_left_to_pedal(const Event& event, const Pitch& held, const std::optional<Finger>& finger) {
  return std::ranges::any_of(event.notes, [&](const Note& note) {
    if (note.held) return false;
    const int distance = std::abs(midi_number(note.pitch) - midi_number(held));
    const bool same_finger = finger && note.finger == finger;
    return distance >= kNobodysSpan || (same_finger && !takes_both(*finger, distance));
  });
}

}  // namespace

HeldKeys::Down* HeldKeys::find(const Pitch& pitch) {
  const auto found = std::ranges::find_if(
      down_, [&](const Down& down) { return midi_number(down.pitch) == midi_number(pitch); });
  return found == down_.end() ? nullptr : &*found;
}

void HeldKeys::let_go(const Event& event) {
  // Where the hand rests it holds nothing.
  if (event.is_rest()) return down_.clear();
  std::erase_if(down_, [&](const Down& down) {
    const bool sounds = down.tied || (event.onset && down.until && *event.onset < *down.until);
    return !sounds || strikes(event, down.pitch);
  });
}

void HeldKeys::forget(const Pitch& pitch) {
  std::erase_if(down_,
                [&](const Down& down) { return midi_number(down.pitch) == midi_number(pitch); });
}

void HeldKeys::take(const Event& event, const Note& note) {
  Down* down = find(note.pitch);
  if (down == nullptr) down = &down_.emplace_back(Down{note.pitch, {}, {}, false});
  if (note.finger) down->finger = last_finger(note);
  down->until = end_of(event, note);
  down->tied = note.tied;
}

void HeldKeys::pass(const Event& event) {
  let_go(event);
  for (const Note& note : event.notes) {
    if (is_over_when_next_begins(event, note)) {
      if (!down_.empty()) forget(note.pitch);
    } else {
      take(event, note);
    }
  }
}

bool HeldKeys::go_to(std::size_t event, std::vector<HeldKey>& held) {
  for (; next_ < event; ++next_) pass(line_.events[next_]);
  const Event& now = line_.events[event];
  let_go(now);
  if (now.struck_count() == 0) return false;
  for (const Note& note : now.notes) {
    if (note.held) take(now, note);
  }
  std::erase_if(down_,
                [&](const Down& down) { return is_left_to_pedal(now, down.pitch, down.finger); });
  for (const Down& down : down_) held.push_back({event, down.pitch, down.finger});
  return !down_.empty();
}

}  // namespace fingerturn
