#include "read/notation/checks.hpp"

#include "score/timeline.hpp"

#include <algorithm>
#include <cstddef>
#include <span>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// The events of one bar: from `begin` up to but not including `end`.
struct Bar {
  std::size_t begin = 0;
  std::size_t end = 0;
};

Bar bar_at(const Line& line, std::size_t begin) {
  std::size_t end = begin;
  while (end < line.events.size() && line.events[end].bar == line.events[begin].bar) ++end;
  return {begin, end};
}

std::optional<Fraction> length_of(std::span<const Event> events) {
  std::optional<Fraction> length = Fraction{};
  for (const Event& event : events) {
    if (!event.duration) return std::nullopt;
    length = sum(*length, *event.duration);
    if (!length) return std::nullopt;
  }
  return length;
}

/// Whether a repeat sign or double bar stands before this event: music may be divided there.
bool divided_before(const Line& line, std::size_t event) {
  const auto bar_line = std::lower_bound(
      line.bar_lines.begin(), line.bar_lines.end(), event,
      [](const BarLine& earlier, std::size_t place) { return earlier.before_event < place; });
  return bar_line != line.bar_lines.end() && bar_line->before_event == event &&
         bar_line->style != BarLineStyle::single;
}

bool may_be_short(const Line& line, Bar bar) {
  return bar.begin == 0 || bar.end == line.events.size() || divided_before(line, bar.begin) ||
         divided_before(line, bar.end);
}

void check_bar(const Passage& passage, const Line& line, Bar bar, Reporter& reporter) {
  const Event& last = line.events[bar.end - 1];
  const Meter* meter = meter_in_bar(passage, last.bar);
  if (meter == nullptr) return;
  const std::optional<Fraction> length =
      length_of(std::span(line.events).subspan(bar.begin, bar.end - bar.begin));
  const std::optional<Fraction> full = reduced(meter->beats, meter->beat_type);
  if (!length || *length == *full || (*length < *full && may_be_short(line, bar))) return;
  const std::optional<Fraction> beats = product(*length, {meter->beat_type, 1});
  if (!beats) return;
  reporter.report(
      "bar-length", last.span,
      fmt::format("expected {} beats of 1/{} in bar {} of the {} hand, found {}", meter->beats,
                  meter->beat_type, last.bar, to_string(line.hand), to_string(*beats)));
}

}  // namespace

void check_bars(const Passage& passage, Reporter& reporter) {
  for (const Line& line : passage.lines) {
    for (Bar bar = bar_at(line, 0); bar.begin < line.events.size(); bar = bar_at(line, bar.end)) {
      check_bar(passage, line, bar, reporter);
    }
  }
}

}  // namespace fingerturn
