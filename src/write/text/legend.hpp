#pragma once

#include "fingerturn/report.hpp"
#include "write/shared/used.hpp"

#include <span>
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
std::vector<LegendEntry> legend_of(const AnalysedScore& analysed);
std::vector<LegendEntry> legend_of(const Used& used);
/// The same for some passages, whichever bars of them were asked for.
std::vector<LegendEntry> legend_of(std::span<const AnalysedPassage> passages);

}  // namespace fingerturn
