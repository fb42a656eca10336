#pragma once

#include "fingerturn/report.hpp"
#include "report/text_columns.hpp"

#include <string>

namespace fingerturn {

/// The counts of one hand, as a sentence.
std::string totals_text(const LineAnalysis& analysis, const TextStyle& style);

/// The reasons of one hand's events, bar by bar.
std::string reasons_text(const Line& line, const LineAnalysis& analysis, const TextStyle& style);

/// What to watch in the lines, bar by bar; empty where there is nothing.
std::string watch_text(const ShownLines& lines, const TextStyle& style);

/// What the row names and abbreviations mean; only those that the report uses.
std::string legend_text(const Report& report, const TextStyle& style);

}  // namespace fingerturn
