#pragma once

#include "fingerturn/scale.hpp"

#include <algorithm>
#include <cstddef>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

/// Handbook scales for tests.
namespace fingerturn {

/// A scale that there is.
inline Passage scale_passage(std::string_view name, const ScaleOptions& options) {
  ScaleResult result = handbook_scale(name, options);
  if (!result.ok()) throw std::invalid_argument(result.problem);
  return result.score.passages.at(0);
}

/// What one hand plays of it.
inline Line scale_line(std::string_view name, Hand hand, int octaves,
                       ScaleDirection direction = ScaleDirection::up) {
  return scale_passage(name, {.hand = hand, .octaves = octaves, .direction = direction})
      .lines.at(0);
}

/// Its fingers in their order, "12312345".
inline std::string fingers_in_order(const Line& line) {
  std::string fingers;
  for (const Event& event : line.events) {
    fingers += static_cast<char>('0' + event.notes.at(0).finger.value());
  }
  return fingers;
}

inline bool is_of_arpeggio(std::string_view name) { return name.ends_with(" arpeggio"); }
inline bool is_of_seventh(std::string_view name) { return name.ends_with(" seventh arpeggio"); }
inline bool is_chromatic(std::string_view name) { return name.ends_with(" chromatic"); }

inline int key_at(const Event& event, std::size_t note = 0) {
  return midi_number(event.notes.at(note).pitch);
}

inline bool on_black(const Note& note) {
  return key_colour(midi_number(note.pitch)) == KeyColour::black;
}

inline const Note& toward_thumb(const Event& event, Hand hand) {
  return hand == Hand::right ? event.notes.front() : event.notes.back();
}

inline const Note& toward_fifth_finger(const Event& event, Hand hand) {
  return hand == Hand::right ? event.notes.back() : event.notes.front();
}

/// What one hand plays, in words: "C4:1+E4:3 D4:2+F4:4".
inline std::string words_of_line(const Line& line) {
  std::string text;
  for (const Event& event : line.events) {
    if (!text.empty()) text += ' ';
    for (std::size_t i = 0; i < event.notes.size(); ++i) {
      const Note& note = event.notes[i];
      text +=
          fmt::format("{}{}:{}", i == 0 ? "" : "+", to_string(note.pitch), note.finger.value_or(0));
    }
  }
  return text;
}

/// The events in the order in which the thumb passes under.
inline std::vector<Event> outward(const Line& rising) {
  std::vector<Event> events = rising.events;
  if (rising.hand == Hand::left) std::ranges::reverse(events);
  return events;
}

}  // namespace fingerturn
