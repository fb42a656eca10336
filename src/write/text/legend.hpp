#pragma once

#include "fingerturn/report.hpp"
#include "write/text/columns.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace fingerturn {

/// What a row of the report means, or its signs. Where the label is empty the words go on from
/// the entry before.
struct LegendEntry {
  std::string_view label;
  std::string words;
};

/// The row names, abbreviations and signs that a report uses, in the order of its rows.
std::vector<LegendEntry> legend_of(const Report& report);
/// The same for some lines with their analyses.
std::vector<LegendEntry> legend_of(const ShownLines& lines);

}  // namespace fingerturn
