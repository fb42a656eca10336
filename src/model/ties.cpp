#include "model/ties.hpp"

#include <algorithm>
#include <cstddef>
#include <map>

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

}  // namespace fingerturn
