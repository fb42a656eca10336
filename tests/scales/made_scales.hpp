#pragma once

#include "fingerturn/scale.hpp"

#include <stdexcept>
#include <string>
#include <string_view>

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

}  // namespace fingerturn
