#pragma once

#include "fingerturn/analysed.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

/// Which events stand in which column of the text report, before anything is drawn.
namespace fingerturn {

/// One or two lines that share their columns.
using SharedLines = std::vector<AnalysedLine>;

/// The lines of a passage.
SharedLines lines_of(const AnalysedPassage& passage);

/// An event of a line; `entry` is its analysis, null for rests and tied continuations.
struct ShownEvent {
  const Event* event = nullptr;
  std::size_t place = 0;  ///< in Line::events
  const EventAnalysis* entry = nullptr;
};

/// What stands in one column: an event of each line, or nothing.
struct Column {
  std::array<std::optional<ShownEvent>, 2> events;
  bool begins_beat = false;
};

struct BarColumns {
  std::int32_t bar = 0;
  std::vector<Column> columns;
};

/// The bars of lines of a passage, or only those that were asked for, whose columns are made bar by
/// bar: those of a long passage would take more room than its notes. Two lines are aligned by onset
/// and must have all their onsets.
class BarSequence {
 public:
  BarSequence(const AnalysedPassage& passage, SharedLines lines);

  [[nodiscard]] const SharedLines& lines() const noexcept { return lines_; }
  [[nodiscard]] std::size_t size() const noexcept { return bars_.size(); }
  [[nodiscard]] BarColumns operator[](std::size_t number) const;
  /// The number that a bar bears.
  [[nodiscard]] std::int32_t bar(std::size_t number) const noexcept {
    return stretches_[bars_[number]].bar;
  }

 private:
  /// Neighbouring events of a line that stand in one bar.
  struct Stretch {
    std::int32_t bar = 0;
    std::uint32_t line = 0;
    std::size_t begin = 0;  ///< in Line::events
    std::size_t end = 0;
    std::size_t entry = 0;  ///< the first in LineAnalysis::events that does not stand before it
  };

  void add_line(std::uint32_t number, const PassageAnalysis& shown);
  void add_events(const Stretch& stretch, std::vector<ShownEvent>& shown) const;

  const Passage* passage_;
  SharedLines lines_;
  std::vector<Stretch> stretches_;  ///< in the order of their bars
  std::vector<std::size_t> bars_;   ///< where the stretches of each bar begin
};

/// Whether every event of every line of the passage has an onset.
bool all_onsets_known(const Passage& passage) noexcept;

/// The lines that share their columns: both hands or, where it is not known which notes sound
/// together, one after the other. None of a passage without lines.
std::vector<SharedLines> lines_together(const AnalysedPassage& passage);

}  // namespace fingerturn
