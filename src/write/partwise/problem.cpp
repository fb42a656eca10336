#include "fingerturn/report.hpp"
#include "write/notated/ticks.hpp"

#include <algorithm>
#include <cstddef>

#include <fmt/core.h>

namespace fingerturn {
namespace {

bool has_no_value(const Event& event) { return !event.duration; }

// What readers take, ours too (docs/musicxml.md).
constexpr Ticks kMostTicksInWhole = 4'000'000;
constexpr double kMostWholesInBar = 2500;
constexpr double kMostTicksInBar = 999'999'999;

/// Whether a bar of a line, whose values are known, lasts longer than that.
bool has_longer_bar(const Line& line, double most_wholes) {
  double length = 0;
  for (std::size_t i = 0; i < line.events.size(); ++i) {
    if (i > 0 && line.events[i].bar != line.events[i - 1].bar) length = 0;
    length += to_double(*line.events[i].duration);
    if (length > most_wholes) return true;
  }
  return false;
}

bool can_be_written(const Passage& passage) {
  const std::optional<Ticks> ticks = ticks_in_whole(passage);
  if (!ticks || *ticks > kMostTicksInWhole) return false;
  const double most = std::min(kMostWholesInBar, kMostTicksInBar / static_cast<double>(*ticks));
  return std::ranges::none_of(passage.lines,
                              [&](const Line& line) { return has_longer_bar(line, most); });
}

/// "write one before the first note of the left hand, as in 1/4 C3:5"
std::string value_problem(const Passage& passage) {
  for (const Line& line : passage.lines) {
    const auto event = std::ranges::find_if(line.events, has_no_value);
    if (event == line.events.end()) continue;
    const std::string_view example = line.hand == Hand::right ? "1/4 C4:1" : "1/4 C3:5";
    return fmt::format(
        "how long the notes of the {} hand are is not known in bar {}; write a note value before "
        "them, as in {}",
        to_string(line.hand), event->bar, example);
  }
  return "its note values are too small, or its bars too long, for a MusicXML score";
}

}  // namespace

std::string musicxml_problem(const Score& score) {
  if (score.passages.size() > 1) {
    return fmt::format("a MusicXML score holds one passage, and here are {}; --passage takes one",
                       score.passages.size());
  }
  const auto has_events = [](const Line& line) { return !line.events.empty(); };
  if (score.passages.empty() || std::ranges::none_of(score.passages[0].lines, has_events)) {
    return "a MusicXML score needs notes, and there are none";
  }
  const Passage& passage = score.passages[0];
  return can_be_written(passage) ? std::string() : value_problem(passage);
}

}  // namespace fingerturn
