#include "read/notation/checks.hpp"

#include "score/timeline.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdlib>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

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

/// How long a bar of a line is, and what it should be.
struct BarLength {
  std::int32_t bar = 0;
  Span last_event;
  std::optional<Fraction> length;  ///< none where values are not known
  Meter meter;                     ///< common time where none is known
  bool adds_up = true;             ///< to the meter, or may be short
};

BarLength bar_length(const Passage& passage, const Line& line, Bar bar) {
  const Event& last = line.events[bar.end - 1];
  BarLength found{last.bar, last.span, {}, {}, true};
  found.length = length_of(std::span(line.events).subspan(bar.begin, bar.end - bar.begin));
  const Meter* meter = meter_in_bar(passage, last.bar);
  if (meter == nullptr) return found;
  found.meter = *meter;
  const std::optional<Fraction> full = reduced(meter->beats, meter->beat_type);
  const std::optional<Fraction>& length = found.length;
  found.adds_up = !length || *length == *full || (*length < *full && may_be_short(line, bar));
  return found;
}

std::vector<BarLength> bar_lengths(const Passage& passage, const Line& line) {
  std::vector<BarLength> lengths;
  for (Bar bar = bar_at(line, 0); bar.begin < line.events.size(); bar = bar_at(line, bar.end)) {
    lengths.push_back(bar_length(passage, line, bar));
  }
  return lengths;
}

/// "5 beats of 1/4 and 1/16"; empty where 64 bits cannot hold it.
std::string beats_words(Fraction length, Meter meter) {
  const std::optional<Fraction> beats = product(length, {meter.beat_type, 1});
  if (!beats) return {};
  const std::int64_t whole = beats->numerator / beats->denominator;
  const std::optional<Fraction> rest = sum(length, *reduced(-whole, meter.beat_type));
  if (!rest) return {};
  if (whole == 0 && rest->numerator > 0) return to_string(*rest);
  const std::string words =
      fmt::format("{} beat{} of 1/{}", whole, whole == 1 ? "" : "s", meter.beat_type);
  return rest->numerator == 0 ? words : words + " and " + to_string(*rest);
}

void report_bar(const BarLength& bar, Hand hand, Reporter& reporter) {
  const Meter meter = bar.meter;
  const std::string found = beats_words(*bar.length, meter);
  if (found.empty()) return;
  const Fraction full = *reduced(meter.beats, meter.beat_type);
  reporter.report("bar-length", bar.last_event,
                  fmt::format("expected {} in bar {} of the {} hand, found {}",
                              beats_words(full, meter), bar.bar, to_string(hand), found),
                  "look for a bar line or a value that is wrong, or write another meter: line");
}

/// The bars that both hands have, right and left.
using BarPairs = std::vector<std::pair<const BarLength*, const BarLength*>>;

BarPairs shared_bars(const std::vector<BarLength>& right, const std::vector<BarLength>& left) {
  BarPairs pairs;
  auto other = left.begin();
  for (const BarLength& bar : right) {
    while (other != left.end() && other->bar < bar.bar) ++other;
    if (other != left.end() && other->bar == bar.bar) pairs.emplace_back(&bar, &*other);
  }
  return pairs;
}

bool differ(const BarLength& right, const BarLength& left) {
  const bool told = !right.adds_up || !left.adds_up;
  return !told && right.length && left.length && *right.length != *left.length;
}

void compare_lengths(const BarPairs& pairs, Reporter& reporter) {
  const BarLength* first = nullptr;
  std::string message;
  std::size_t others = 0;
  for (const auto& [right, left] : pairs) {
    if (!differ(*right, *left)) continue;
    if (first != nullptr) {
      ++others;
      continue;
    }
    first = left;
    message = fmt::format(
        "expected bar {} to be as long in both hands, found {} in the right hand and {} in the "
        "left",
        left->bar, beats_words(*right->length, right->meter),
        beats_words(*left->length, left->meter));
  }
  if (first == nullptr) return;
  if (others > 0) message += fmt::format(", and {} other bars that differ", others);
  reporter.report("two-hands", first->last_event, message,
                  "look for a note, a rest or a bar line that is missing");
}

/// The first bar that one hand has and the other has not.
const BarLength* lone_bar(const std::vector<BarLength>& more, const std::vector<BarLength>& fewer) {
  for (std::size_t i = 0; i < more.size(); ++i) {
    if (i == fewer.size() || fewer[i].bar != more[i].bar) return &more[i];
  }
  return nullptr;
}

bool has_finger(const Event& event) {
  return std::ranges::any_of(event.notes, [](const Note& note) { return note.finger.has_value(); });
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
  // Somebody may write the first note right and then leave the colons out.
  const bool first_is_right = has_finger(line.events.front());
  if (first_is_right) before = midi_number(line.events.front().notes[0].pitch);
  for (const Event& event : std::span(line.events).subspan(first_is_right ? 1 : 0)) {
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
    for (const BarLength& bar : bar_lengths(passage, line)) {
      if (!bar.adds_up) report_bar(bar, line.hand, reporter);
    }
  }
}

void check_hands(const Passage& passage, Reporter& reporter) {
  if (passage.lines.size() != 2) return;
  const std::vector<BarLength> right = bar_lengths(passage, passage.lines[0]);
  const std::vector<BarLength> left = bar_lengths(passage, passage.lines[1]);
  if (right.size() != left.size()) {
    const bool more_right = right.size() > left.size();
    const BarLength* lone = more_right ? lone_bar(right, left) : lone_bar(left, right);
    reporter.report("two-hands", lone->last_event,
                    fmt::format("expected as many bars in both hands, found {} in the right hand "
                                "and {} in the left",
                                right.size(), left.size()),
                    fmt::format("the {} hand has no bar {}; where it is silent, write a rest",
                                more_right ? "left" : "right", lone->bar));
  }
  compare_lengths(shared_bars(right, left), reporter);
}

void check_digits(const Passage& passage, Reporter& reporter) {
  for (const Line& line : passage.lines) {
    if (!looks_misplaced(line)) continue;
    reporter.report("digits", line.events.front().span,
                    "expected steps within an octave, found wider ones at most notes, without a "
                    "finger",
                    "if the numbers are fingers, they stand after a colon: C4:1 D:2 E:3");
  }
}

}  // namespace fingerturn
