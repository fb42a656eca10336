#pragma once

#include "fingerturn/analysis.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace fingerturn {

/// Why an event is played level (2.4), if it is.
enum class Level : std::uint8_t { no, chord, outer_fingers, octave, repeated };

/// What the rules look at of one struck event.
struct Strike {
  std::size_t event = 0;             ///< its place in Line::events
  std::size_t note_count = 0;        ///< the notes that are struck, 1 or more
  int key = 0;                       ///< the MIDI note number of its lowest note
  int top_key = 0;                   ///< and of its highest
  OuterFingers arrival;              ///< the fingers that strike
  OuterFingers departure;            ///< the fingers on the keys when the hand plays on
  std::optional<Side> first_change;  ///< where the first silent change turns the forearm (2.7)
  std::optional<Side> last_change;   ///< and the last
  Level level = Level::no;
  bool separated = false;   ///< the gesture before it has ended: a rest, breath or skipped bar
  bool open_ended = false;  ///< a trill or tremolo: on which side it ends is not known

  [[nodiscard]] bool is_single_note() const noexcept { return note_count == 1; }
  [[nodiscard]] bool is_level() const noexcept { return level != Level::no; }
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
