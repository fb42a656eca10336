#pragma once

#include "fingerturn/report.hpp"
#include "text/text_out.hpp"
#include "write/text/columns.hpp"
#include "write/text/legend.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace fingerturn {

/// The counts of one hand, as a sentence.
std::string totals_text(const LineAnalysis& analysis, const TextStyle& style);

/// The reasons or cues of one hand's events, bar by bar; both where the style asks for both.
void add_reasons(TextOut& out, const AnalysedLine& line, const TextStyle& style);

/// The tempo of full swings, and how the hands go together; empty where neither is known.
std::string together_text(const AnalysedPassage& passage, const TextStyle& style);

/// Words behind a label of the foot, wrapped; empty where there are no words.
std::string labelled(std::string_view label, std::string_view words, const TextStyle& style);

/// What the row names and abbreviations mean, of those rows that the style shows.
std::string legend_text(const std::vector<LegendEntry>& entries, const TextStyle& style);

}  // namespace fingerturn
