#pragma once

#include "fingerturn/score.hpp"

#include <cstddef>
#include <vector>

namespace fingerturn {

/// The outer fingers of what is struck; the same finger twice for a single note, 0 where a finger
/// is missing.
struct OuterFingers {
  Finger lowest = 0;
  Finger highest = 0;

  [[nodiscard]] bool known() const noexcept { return lowest != 0; }
  /// Twice the middle of the fingers, so that it stays a whole number.
  [[nodiscard]] int doubled_middle() const noexcept { return lowest + highest; }
};

/// What the rules look at of one struck event.
struct Strike {
  std::size_t event = 0;       ///< its place in Line::events
  std::size_t note_count = 0;  ///< the notes that are struck, 1 or more
  int key = 0;                 ///< the MIDI note number of a single note
  OuterFingers arrival;        ///< the fingers that strike
  OuterFingers departure;      ///< the fingers on the keys when the hand plays on
  bool separated = false;      ///< the gesture before it has ended: a rest, breath or skipped bar

  [[nodiscard]] bool is_single_note() const noexcept { return note_count == 1; }
};

/// The struck events of a line in time order.
std::vector<Strike> strikes_of(const Line& line);

}  // namespace fingerturn
