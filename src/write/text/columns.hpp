#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/score.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

/// Which events stand in which column of the text report, before anything is drawn.
namespace fingerturn {

/// A line of the score with its analysis, as the text report shows it.
struct ShownLine {
  const Line* line = nullptr;
  const LineAnalysis* analysis = nullptr;
};

/// One or two lines that share their columns.
using ShownLines = std::vector<ShownLine>;

/// The lines of a passage with their analyses.
ShownLines shown_lines(const Passage& passage, const PassageAnalysis& analysis);

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

/// The bars of the lines with their columns, or only those of a range. Two lines are aligned by
/// onset and must have all their onsets.
std::vector<BarColumns> columns_of(const Passage& passage, const ShownLines& lines,
                                   const std::optional<BarRange>& range);

/// Whether every event of every line of the passage has an onset.
bool all_onsets_known(const Passage& passage) noexcept;

}  // namespace fingerturn
