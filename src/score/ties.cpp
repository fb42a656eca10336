#include "score/ties.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <utility>

namespace fingerturn {
namespace {

/// The ties that wait for their continuation, by key. A span and not a note is kept, since that is
/// all a message needs.
using OpenTies = std::map<int, Span>;

void resolve_note(Note& note, const OpenTies& open, OpenTies& next) {
  const int key = midi_number(note.pitch);
  note.held = open.contains(key);
  next.erase(key);
}

void open_ties_of(const Event& event, OpenTies& open) {
  for (const Note& note : event.notes) {
    if (note.tied) open[midi_number(note.pitch)] = note.span;
  }
}

void close_all(OpenTies& open, std::vector<Span>& to_nothing) {
  for (const auto& [key, span] : open) to_nothing.push_back(span);
  open.clear();
}

/// What is on a key that sounds on.
struct OnKey {
  std::optional<Finger> finger;
  bool suggested = false;
  bool cut_off = false;  ///< it was struck, or its last continuation stood, outside of the bars
};
using OnKeys = std::map<int, OnKey>;

OnKey on_key_of(const Note& note, const OnKeys& sounding, bool inside) {
  OnKey on_key{std::nullopt, note.suggested, !inside};
  const auto before = sounding.find(midi_number(note.pitch));
  if (note.finger) {
    on_key.finger = written_fingers(note).back();
  } else if (note.held && before != sounding.end()) {
    on_key.finger = before->second.finger;
    on_key.suggested = before->second.suggested;
  }
  return on_key;
}

void finger_continuation(Note& note, const OnKeys& sounding) {
  const auto before = sounding.find(midi_number(note.pitch));
  if (!note.held || note.finger || before == sounding.end() || !before->second.cut_off) return;
  note.finger = before->second.finger;
  note.suggested = before->second.suggested;
}

void go_past(const Event& event, bool inside, OnKeys& sounding) {
  OnKeys next = sounding;
  for (const Note& note : event.notes) {
    const int key = midi_number(note.pitch);
    next.erase(key);
    if (note.tied) next[key] = on_key_of(note, sounding, inside);
  }
  sounding = std::move(next);
}

}  // namespace

std::vector<Span> resolve_ties(Line& line) {
  std::vector<Span> to_nothing;
  OpenTies open;
  for (Event& event : line.events) {
    if (event.is_rest()) close_all(open, to_nothing);
    if (!open.empty()) {
      OpenTies still_open = open;
      for (Note& note : event.notes) resolve_note(note, open, still_open);
      open = std::move(still_open);
    } else {
      for (Note& note : event.notes) note.held = false;
    }
    open_ties_of(event, open);
  }
  close_all(open, to_nothing);
  std::sort(to_nothing.begin(), to_nothing.end(),
            [](const Span& left, const Span& right) { return left.begin < right.begin; });
  return to_nothing;
}

void drop_ties_to_nothing(Line& line) {
  std::set<int> following;
  for (auto event = line.events.rbegin(); event != line.events.rend(); ++event) {
    if (event->is_rest()) following.clear();
    for (Note& note : event->notes) note.tied &= following.contains(midi_number(note.pitch));
    for (const Note& note : event->notes) following.insert(midi_number(note.pitch));
  }
}

void finger_ties_into(Line& line, std::size_t begin, std::size_t end) {
  OnKeys sounding;
  for (std::size_t at = 0; at < end; ++at) {
    Event& event = line.events[at];
    if (event.is_rest()) sounding.clear();
    const bool inside = at >= begin;
    if (inside) {
      for (Note& note : event.notes) finger_continuation(note, sounding);
    }
    go_past(event, inside, sounding);
  }
}

}  // namespace fingerturn
