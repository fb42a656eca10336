#include "read/musicxml/bar_list.hpp"

#include "fingerturn/score.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <cstddef>
#include <span>
#include <string>

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
  std::vector<std::string> words;
  for (const BarRange& range : std::span(ranges).first(shown)) {
    words.push_back(range_words(range));
    told += static_cast<std::size_t>(range.last - range.first) + 1;
  }
  if (told < bars.size()) words.push_back(fmt::format("{} more", bars.size() - told));
  return fmt::format("{} {}", bars.size() == 1 ? "bar" : "bars", enumerated(words));
}

}  // namespace fingerturn
