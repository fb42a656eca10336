#include "write/text/watch.hpp"

#include "text/wrap.hpp"
#include "write/shared/told_once.hpp"
#include "write/text/signs.hpp"

#include <cstddef>
#include <string>

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

/// " Again in bars 4, 5 and 8."
std::string again_words(const ToldOnce& told) {
  if (told.again.empty()) return {};
  return fmt::format(" Again in {}.", bars_words(told.again));
}

/// "bar 12    caution   The fingers lie across ... [crossed-in-chord]"
std::string finding_text(const AnalysedLine& line, const ToldOnce& told, const TextStyle& style) {
  constexpr std::size_t kColumn = 10;
  const Finding& finding = *told.finding;
  const std::string bar = padded(fmt::format("bar {}", line.event_of(finding).bar), kColumn);
  const std::string level = padded(name_of(finding.level), kColumn);
  const std::string text =
      wrapped(bar + level, fmt::format("{}{} [{}]", told.message, again_words(told), finding.rule),
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
    for (const ToldOnce& told : told_once(line).entries) text += finding_text(line, told, style);
  }
  return text;
}

}  // namespace fingerturn
