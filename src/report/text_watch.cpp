#include "model/wrap.hpp"
#include "report/signs.hpp"
#include "report/text_foot.hpp"

#include <fmt/format.h>

namespace fingerturn {
namespace {

Emphasis emphasis_of(Level level) {
  switch (level) {
    case Level::caution:
      return Emphasis::doubled;
    case Level::strain:
      return Emphasis::open;
    case Level::info:
      break;
  }
  return Emphasis::plain;
}

/// "bar 12    caution   The fingers lie across ... [crossed-in-chord]"
std::string finding_text(const Line& line, const Finding& finding, const TextStyle& style) {
  constexpr std::size_t kColumn = 10;
  const std::string bar = padded(fmt::format("bar {}", line.events[finding.event].bar), kColumn);
  const std::string level = padded(name_of(finding.level), kColumn);
  const std::string text =
      wrapped(bar + level, fmt::format("{} [{}]", finding.message, finding.rule), style.columns);
  return bar + emphasised(level, emphasis_of(finding.level), style.colour) +
         text.substr(bar.size() + level.size());
}

}  // namespace

std::string watch_text(const ShownLines& lines, const TextStyle& style) {
  std::string text;
  for (const ShownLine& line : lines) {
    if (line.analysis->watch.empty()) continue;
    const std::string head = fmt::format("watch, {} hand", to_string(line.line->hand));
    text += '\n' + emphasised(head, Emphasis::strong, style.colour) + '\n';
    for (const Finding& finding : line.analysis->watch) {
      text += finding_text(*line.line, finding, style);
    }
  }
  return text;
}

}  // namespace fingerturn
