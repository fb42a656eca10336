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

/// The bars of lines of a passage with their columns, or only those that were asked for. Two lines
/// are aligned by onset and must have all their onsets.
std::vector<BarColumns> columns_of(const AnalysedPassage& passage, const SharedLines& lines);

/// Whether every event of every line of the passage has an onset.
bool all_onsets_known(const Passage& passage) noexcept;

}  // namespace fingerturn
