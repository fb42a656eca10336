#pragma once

#include "write/notated/notated.hpp"
#include "write/notated/sounding.hpp"
#include "write/text/columns.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace fingerturn {

/// Writes lines of a passage on staves, bar after bar: those of a long passage would take more room
/// than its notes. Two lines must have all their onsets.
class NotatedBars {
 public:
  /// The passage must outlive it.
  NotatedBars(const AnalysedPassage& passage, SharedLines lines);

  [[nodiscard]] const SharedLines& lines() const noexcept { return sequence_.lines(); }
  /// The ticks of a whole note; none where the times are not known: then chords have no value.
  [[nodiscard]] std::optional<Ticks> ticks_in_whole() const noexcept { return ticks_; }
  /// The next bar; none after the last.
  std::optional<NotatedBar> next();

 private:
  void set_changes(NotatedBar& bar);
  void set_bar_lines(std::size_t line, const BarColumns& columns, NotatedHand& hand) const;

  const Passage* passage_;
  BarSequence sequence_;
  std::optional<Ticks> ticks_;
  KeySignature chosen_key_;
  std::size_t number_ = 0;
  std::optional<Meter> meter_;
  std::optional<KeySignature> key_;
  std::int32_t last_bar_ = 0;
  std::vector<std::vector<Sounding>> going_on_;  ///< of each line, into the next bar
};

}  // namespace fingerturn
