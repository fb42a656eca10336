#include "read/notation/checks.hpp"

#include "score/timeline.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdlib>
#include <optional>
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

bool could_be_a_finger(const Note& note) {
  return !note.finger && note.pitch.octave >= kThumb && note.pitch.octave <= kFifth;
}

bool looks_misplaced(const Line& line) {
  constexpr int kOctave = 12;  // semitones
  constexpr std::size_t kFewestSteps = 3;
  std::size_t steps = 0;
  std::size_t wide = 0;
  std::optional<int> before;
  for (const Event& event : line.events) {
    if (!std::all_of(event.notes.begin(), event.notes.end(), could_be_a_finger)) return false;
    if (event.notes.size() != 1) continue;
    const int key = midi_number(event.notes[0].pitch);
    if (before) {
      ++steps;
      if (std::abs(key - *before) > kOctave) ++wide;
    }
    before = key;
  }
  return steps >= kFewestSteps && 2 * wide > steps;
}

}  // namespace

void check_bars(const Passage& passage, Reporter& reporter) {
  for (const Line& line : passage.lines) {
    for (Bar bar = bar_at(line, 0); bar.begin < line.events.size(); bar = bar_at(line, bar.end)) {
      check_bar(passage, line, bar, reporter);
    }
  }
}

void check_digits(const Passage& passage, Reporter& reporter) {
  for (const Line& line : passage.lines) {
    if (!looks_misplaced(line)) continue;
    reporter.report("digits", line.events.front().span,
                    "expected steps within an octave, found wider ones at most notes, and no "
                    "finger",
                    "if the numbers are fingers, they stand after a colon: C4:1 D:2 E:3");
  }
}

}  // namespace fingerturn
