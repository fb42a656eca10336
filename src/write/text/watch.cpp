#include "write/text/watch.hpp"

#include "text/wrap.hpp"
#include "write/text/signs.hpp"

#include <cstddef>
#include <cstdint>
#include <map>
#include <string_view>
#include <tuple>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

Emphasis emphasis_of(WatchLevel level) {
  switch (level) {
    case WatchLevel::caution:
      return Emphasis::doubled;
    case WatchLevel::strain:
      return Emphasis::open;
    case WatchLevel::info:
      break;
  }
  return Emphasis::plain;
}

/// The same sentence at one place or several: the first, and the bars of the others.
struct Repeated {
  const Finding* finding = nullptr;
  std::vector<std::int32_t> again{};
};

std::vector<Repeated> grouped(const AnalysedLine& line) {
  std::vector<Repeated> groups;
  std::map<std::tuple<std::string_view, WatchLevel, std::string_view>, std::size_t> places;
  for (const Finding& finding : line.found().watch) {
    const auto [place, is_new] =
        places.try_emplace({finding.rule, finding.level, finding.message}, groups.size());
    if (is_new) {
      groups.push_back({&finding});
      continue;
    }
    std::vector<std::int32_t>& again = groups[place->second].again;
    const std::int32_t bar = line.event_of(finding).bar;
    if (again.empty() || again.back() != bar) again.push_back(bar);
  }
  return groups;
}

/// " Again in bars 4, 5 and 8 more."
std::string again_words(const std::vector<std::int32_t>& bars) {
  constexpr std::size_t kMostBars = 8;
  if (bars.empty()) return {};
  std::string words = bars.size() == 1 ? " Again in bar" : " Again in bars";
  for (std::size_t i = 0; i < bars.size() && i < kMostBars; ++i) {
    words += fmt::format("{} {}", i > 0 ? "," : "", bars[i]);
  }
  if (bars.size() > kMostBars) words += fmt::format(" and {} more", bars.size() - kMostBars);
  return words + '.';
}

/// "bar 12    caution   The fingers lie across ... [crossed-in-chord]"
std::string finding_text(const AnalysedLine& line, const Repeated& repeated,
                         const TextStyle& style) {
  constexpr std::size_t kColumn = 10;
  const Finding& finding = *repeated.finding;
  const std::string bar = padded(fmt::format("bar {}", line.event_of(finding).bar), kColumn);
  const std::string level = padded(name_of(finding.level), kColumn);
  const std::string text =
      wrapped(bar + level,
              fmt::format("{}{} [{}]", finding.message, again_words(repeated.again), finding.rule),
              style.columns);
  return bar + emphasised(level, emphasis_of(finding.level), style.colour) +
         text.substr(bar.size() + level.size());
}

}  // namespace

std::string watch_text(const AnalysedPassage& passage, const TextStyle& style) {
  std::string text;
  for (const AnalysedLine line : passage) {
    if (line.found().watch.empty()) continue;
    const std::string head = fmt::format("watch, {} hand", to_string(line.hand()));
    text += '\n' + emphasised(head, Emphasis::strong, style.colour) + '\n';
    for (const Repeated& repeated : grouped(line)) {
      text += finding_text(line, repeated, style);
    }
  }
  return text;
}

}  // namespace fingerturn
