#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// The text report taken apart again, so that tests can look at what stands where.
namespace fingerturn::tests {

/// What stands in a row, and the column (in code points, from 0) at which it begins.
struct ReportCell {
  std::size_t column = 0;
  std::string text;

  friend bool operator==(const ReportCell&, const ReportCell&) = default;
};

struct ReportRow {
  std::string label;  ///< empty for a row that goes on with what the row above began
  std::vector<ReportCell> cells;

  [[nodiscard]] std::vector<std::size_t> bar_line_columns() const;
  /// The cells that are no bar lines.
  [[nodiscard]] std::vector<ReportCell> entries() const;
};

/// The rows of one hand in one system; the first holds the names of the bars.
struct ReportBlock {
  std::string hand;
  std::size_t system = 0;  ///< the number of its system in the report, from 0
  std::vector<ReportRow> rows;

  /// All rows under a label: more than one where chords are stacked.
  [[nodiscard]] std::vector<ReportRow> rows_of(std::string_view label) const;
};

/// The blocks of a report of one passage; no title may begin with the name of a hand.
std::vector<ReportBlock> blocks_of(const std::string& report);

std::vector<std::string> lines_of(const std::string& text);

/// The text without sequences of ECMA-48 that set colours.
std::string without_colours(const std::string& text);

}  // namespace fingerturn::tests
