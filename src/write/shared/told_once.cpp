#include "write/shared/told_once.hpp"

#include "text/words.hpp"
#include "views/missing_share.hpp"

#include <algorithm>
#include <map>
#include <string_view>
#include <tuple>

#include <fmt/core.h>

namespace fingerturn {
namespace {

using Said = std::tuple<std::string_view, WatchLevel, std::string_view>;

/// Of missing fingers it is told how they are filled in, and of several rows only the share.
std::string message_of(const Finding& finding, const LineAnalysis& line, bool several_rows) {
  const std::size_t missing = line.totals.events - line.totals.fingered;
  if (finding.rule != kMissingFinger || missing < 2) return finding.message;
  return (several_rows ? missing_share_words(missing, line.totals.events) : finding.message) +
         " --suggest fills them in.";
}

/// `bars` rise.
void add_once(std::vector<std::int32_t>& bars, std::int32_t bar) {
  if (bars.empty() || bars.back() != bar) bars.push_back(bar);
}

}  // namespace

WatchTold told_once(const AnalysedLine& line) {
  const LineAnalysis& found = line.found();
  const bool several_rows = std::ranges::count(found.watch, kMissingFinger, &Finding::rule) > 1;
  WatchTold told;
  std::map<Said, std::size_t> places;
  for (const Finding& finding : found.watch) {
    const bool is_row = several_rows && finding.rule == kMissingFinger;
    const std::string_view message = is_row ? std::string_view() : finding.message;
    const auto [place, is_new] =
        places.try_emplace({finding.rule, finding.level, message}, told.entries.size());
    if (is_new) {
      told.entries.push_back({&finding, message_of(finding, found, several_rows), {}, {}});
    }
    ToldOnce& entry = told.entries[place->second];
    const std::int32_t bar = line.event_of(finding).bar;
    if (!is_new && !is_row) add_once(entry.again, bar);
    if (is_new || !is_row) add_once(entry.bars, bar);
    told.entry_of.push_back(place->second);
  }
  return told;
}

std::string bars_words(const std::vector<std::int32_t>& bars) {
  constexpr std::size_t kMostBars = 8;
  std::vector<std::string> words;
  for (std::size_t i = 0; i < bars.size() && i < kMostBars; ++i) {
    words.push_back(std::to_string(bars[i]));
  }
  if (bars.size() > kMostBars) words.push_back(fmt::format("{} more", bars.size() - kMostBars));
  return (bars.size() == 1 ? "bar " : "bars ") + enumerated(words);
}

}  // namespace fingerturn
