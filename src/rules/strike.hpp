#pragma once

#include "fingerturn/analysis.hpp"

#include <cstddef>
#include <vector>

namespace fingerturn {

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

/// Goes through the struck events of a line in time order, from one rest, breath or skipped bar to
/// the next.
class StrikeReader {
 public:
  explicit StrikeReader(const Line& line) : line_(line) {}

  /// The strikes up to the next rest, breath or skipped bar; false where none are left.
  bool next(std::vector<Strike>& strikes);

 private:
  const Line& line_;
  std::size_t at_ = 0;
  bool separated_ = false;
};

/// The struck events of a line in time order.
std::vector<Strike> strikes_of(const Line& line);

}  // namespace fingerturn
