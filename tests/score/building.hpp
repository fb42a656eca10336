#pragma once

#include "fingerturn/score.hpp"

#include <initializer_list>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

/// Scores made by hand, for tests of what comes after the reader.
namespace fingerturn::tests {

inline Note note_of(std::string_view pitch, std::optional<Finger> finger = std::nullopt) {
  const std::optional<Pitch> parsed = parse_pitch(pitch);
  if (!parsed) throw std::invalid_argument("no pitch: " + std::string(pitch));
  Note note;
  note.pitch = *parsed;
  note.finger = finger;
  return note;
}

inline Note tied(Note note) {
  note.tied = true;
  return note;
}

inline Note held(Note note) {
  note.held = true;
  return note;
}

inline Note changing(Note note, std::vector<Finger> to) {
  note.changes_to = std::move(to);
  return note;
}

/// Events that fill bars: each has its notes and its value, or none.
inline Event event_of(std::int32_t bar, std::optional<Fraction> duration, std::vector<Note> notes) {
  Event event;
  event.notes = std::move(notes);
  event.duration = duration;
  event.bar = bar;
  return event;
}

inline constexpr Fraction kQuarter{1, 4};

inline Event rest_of(std::int32_t bar, std::optional<Fraction> duration) {
  return event_of(bar, duration, {});
}

inline Line line_of(Hand hand, std::vector<Event> events, std::vector<BarLine> bar_lines = {}) {
  return {hand, std::move(events), std::move(bar_lines)};
}

inline Passage passage_of(std::vector<Line> lines) {
  Passage passage;
  passage.lines = std::move(lines);
  return passage;
}

}  // namespace fingerturn::tests
