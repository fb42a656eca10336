#pragma once

#include "read/musicxml/written_note.hpp"

#include <optional>
#include <string_view>

namespace fingerturn {

/// Counts time within a measure in the ticks of a part. Where a part changes its divisions, or has
/// a duration that is no whole number of ticks, the ticks become finer and all that is counted so
/// far is counted anew.
class TickCounter {
 public:
  explicit TickCounter(WrittenPart& part) : part_(part) {}

  /// How many divisions make a quarter note from here on; false where the text is no such number
  /// or the ticks would become too fine to count.
  bool set_divisions(std::string_view text);
  /// A duration in divisions; nothing where it is none, below 0 or longer than any bar.
  std::optional<Ticks> of(std::string_view text);
  /// A time in whole notes; nothing where that is longer than any bar or too fine to count.
  std::optional<Ticks> of_value(Fraction value);

  void start_measure() { now_ = note_ = furthest_ = 0; }
  /// A note begins now; of a chord the first does.
  void start_note() { note_ = now_; }
  /// Goes on or back in time, not past the beginning of the measure; false where that would make
  /// it longer than any bar.
  bool move(Ticks ticks);
  [[nodiscard]] Ticks now() const noexcept { return now_; }
  /// When the last note began.
  [[nodiscard]] Ticks note() const noexcept { return note_; }
  [[nodiscard]] Ticks furthest() const noexcept { return furthest_; }

 private:
  std::optional<Ticks> count(std::string_view text);
  std::optional<Ticks> count_quarters(Fraction quarters);
  bool refine(Ticks factor);

  WrittenPart& part_;
  Fraction divisions_{1, 1};    ///< in a quarter note
  std::string_view last_text_;  ///< the duration that was asked for last, and its ticks
  Ticks last_ticks_ = 0;
  Ticks now_ = 0;
  Ticks note_ = 0;
  Ticks furthest_ = 0;
};

/// Counts notes in ticks that are `factor` times finer.
void refine_ticks(std::vector<WrittenNote>& notes, Ticks factor);

}  // namespace fingerturn
