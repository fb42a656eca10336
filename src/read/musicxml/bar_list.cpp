#include "read/musicxml/bar_list.hpp"

#include "fingerturn/score.hpp"

#include <algorithm>
#include <cstddef>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// Bars that follow one another, where they are three or more, are one range.
std::vector<BarRange> ranges_of(const std::vector<std::int32_t>& bars) {
  std::vector<BarRange> ranges;
  for (std::size_t begin = 0; begin < bars.size();) {
    std::size_t end = begin + 1;
    while (end < bars.size() && bars[end] == bars[end - 1] + 1) ++end;
    if (end - begin == 2) --end;
    ranges.push_back({bars[begin], bars[end - 1]});
    begin = end;
  }
  return ranges;
}

std::string range_words(const BarRange& range) {
  if (range.first == range.last) return fmt::format("{}", range.first);
  return fmt::format("{} to {}", range.first, range.last);
}

}  // namespace

std::string bar_list(std::vector<std::int32_t> bars) {
  constexpr std::size_t kMostRanges = 8;
  std::sort(bars.begin(), bars.end());
  bars.erase(std::unique(bars.begin(), bars.end()), bars.end());
  const std::vector<BarRange> ranges = ranges_of(bars);
  const std::size_t shown = std::min(ranges.size(), kMostRanges);
  std::size_t told = 0;
  std::string words = bars.size() == 1 ? "bar" : "bars";
  for (std::size_t i = 0; i < shown; ++i) {
    const bool is_last = i + 1 == ranges.size();
    words += (i == 0 ? " " : is_last ? " and " : ", ") + range_words(ranges[i]);
    told += static_cast<std::size_t>(ranges[i].last - ranges[i].first) + 1;
  }
  return told < bars.size() ? words + fmt::format(" and {} more", bars.size() - told) : words;
}

}  // namespace fingerturn
