#include "score/timeline.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>

namespace fingerturn {
namespace {

using BarLengths = std::map<std::int32_t, std::optional<Fraction>>;

/// Gives the events of a bar their time in it as their onset, where known. Gives the length of the
/// bar, where known.
std::optional<Fraction> measure_bar(std::vector<Event>& events, std::size_t& at, bool& exact) {
  std::optional<Fraction> time = Fraction{};
  const std::int32_t bar = events[at].bar;
  for (; at < events.size() && events[at].bar == bar; ++at) {
    const std::optional<Fraction>& duration = events[at].duration;
    events[at].onset = duration ? time : std::nullopt;
    if (!time || !duration) {
      time.reset();
      continue;
    }
    time = sum(*time, *duration);
    if (!time) exact = false;
  }
  return time;
}

void measure_bars(Line& line, BarLengths& lengths, bool& exact) {
  for (std::size_t at = 0; at < line.events.size();) {
    const std::int32_t bar = line.events[at].bar;
    const std::optional<Fraction> length = measure_bar(line.events, at, exact);
    std::optional<Fraction>& longest = lengths[bar];
    if (length && (!longest || *longest < *length)) longest = length;
  }
}

/// Turns the lengths of the bars into their beginnings.
BarLengths bar_starts(const BarLengths& lengths, bool& exact) {
  BarLengths starts;
  std::optional<Fraction> time = Fraction{};
  for (const auto& [bar, length] : lengths) {
    starts[bar] = time;
    if (!time || !length) {
      time.reset();
      continue;
    }
    time = sum(*time, *length);
    if (!time) exact = false;
  }
  return starts;
}

/// Turns times in bars into times from the beginning.
void place_events(Line& line, const BarLengths& starts, bool& exact) {
  auto start = starts.begin();
  for (Event& event : line.events) {
    if (start->first != event.bar) start = starts.find(event.bar);
    if (!event.onset) continue;
    event.onset = start->second ? sum(*start->second, *event.onset) : std::nullopt;
    if (start->second && !event.onset) exact = false;
  }
}

template <typename Value>
void settle(std::vector<FromBar<Value>>& changes, const std::vector<std::int32_t>& bars) {
  std::vector<FromBar<Value>> settled;
  for (FromBar<Value>& change : changes) {
    const auto bar = std::lower_bound(bars.begin(), bars.end(), change.bar);
    if (bar == bars.end()) continue;
    change.bar = *bar;
    if (!settled.empty() && settled.back().bar == change.bar) settled.pop_back();
    settled.push_back(change);
  }
  changes = std::move(settled);
}

/// Words stand before the next bar that is there; behind the last they have the number `behind`.
void settle_words(std::vector<FromBar<std::string>>& words, const std::vector<std::int32_t>& bars,
                  std::int32_t behind) {
  for (FromBar<std::string>& each : words) {
    const auto bar = std::lower_bound(bars.begin(), bars.end(), each.bar);
    each.bar = bar == bars.end() ? behind : *bar;
  }
}

template <typename Value>
const Value* value_in_bar(const std::vector<FromBar<Value>>& changes, std::int32_t bar) noexcept {
  const auto after = std::upper_bound(
      changes.begin(), changes.end(), bar,
      [](std::int32_t number, const FromBar<Value>& change) { return number < change.bar; });
  return after == changes.begin() ? nullptr : &std::prev(after)->value;
}

}  // namespace

std::vector<std::int32_t> bars_of(const Passage& passage) {
  std::vector<std::int32_t> bars;
  for (const Line& line : passage.lines) {
    for (const Event& event : line.events) {
      if (bars.empty() || bars.back() != event.bar) bars.push_back(event.bar);
    }
  }
  std::sort(bars.begin(), bars.end());
  bars.erase(std::unique(bars.begin(), bars.end()), bars.end());
  return bars;
}

bool set_onsets(Passage& passage) {
  bool exact = true;
  BarLengths lengths;
  for (Line& line : passage.lines) measure_bars(line, lengths, exact);
  const BarLengths starts = bar_starts(lengths, exact);
  for (Line& line : passage.lines) place_events(line, starts, exact);
  return exact;
}

void settle_changes(Passage& passage) {
  const std::vector<std::int32_t> bars = bars_of(passage);
  settle(passage.meters, bars);
  settle(passage.tempos, bars);
  settle(passage.keys, bars);
  const std::int32_t last = bars.empty() ? 0 : bars.back();
  settle_words(passage.notes, bars, last);
  settle_words(passage.comments, bars, bars.empty() ? 0 : last + 1);
}

const Meter* meter_in_bar(const Passage& passage, std::int32_t bar) noexcept {
  return value_in_bar(passage.meters, bar);
}

std::optional<StruckAt> struck_at(const Passage& passage, const Line& line,
                                  const BeatInBar& moment) {
  constexpr double kNear = 0.001;
  const std::vector<std::size_t> beginnings = bar_beginnings(line);
  std::optional<StruckAt> found;
  for (std::size_t at = 0; at < line.events.size(); ++at) {
    const Event& event = line.events[at];
    if (event.bar != moment.bar || event.struck_count() == 0) continue;
    const std::optional<Fraction> beat = beat_of(passage, line, at, beginnings);
    if (!beat || std::abs(to_double(*beat) - moment.beat) > kNear) continue;
    if (!found || line.events[found->event].grace) found = {at, *beat};
  }
  return found;
}

const Tempo* tempo_in_bar(const Passage& passage, std::int32_t bar) noexcept {
  return value_in_bar(passage.tempos, bar);
}

KeySignature key_in_bar(const Passage& passage, std::int32_t bar) noexcept {
  const KeySignature* key = value_in_bar(passage.keys, bar);
  return key == nullptr ? KeySignature{} : *key;
}

std::vector<std::size_t> bar_beginnings(const Line& line) {
  std::vector<std::size_t> beginnings;
  for (std::size_t i = 0; i < line.events.size(); ++i) {
    if (i == 0 || line.events[i].bar != line.events[i - 1].bar) beginnings.push_back(i);
  }
  return beginnings;
}

std::size_t bar_beginning(const std::vector<std::size_t>& beginnings, std::size_t event) noexcept {
  const auto after = std::upper_bound(beginnings.begin(), beginnings.end(), event);
  return after == beginnings.begin() ? 0 : *std::prev(after);
}

std::optional<Fraction> beat_at(const Meter& meter, Fraction bar_onset, Fraction onset) noexcept {
  const std::optional<Fraction> time = sum(onset, {-bar_onset.numerator, bar_onset.denominator});
  const std::optional<Fraction> beats = time ? product(*time, {meter.beat_type, 1}) : std::nullopt;
  return beats ? sum(*beats, {1, 1}) : std::nullopt;
}

std::optional<Fraction> beat_of(const Passage& passage, const Line& line, std::size_t event,
                                const std::vector<std::size_t>& beginnings) {
  const Event& found = line.events[event];
  const std::optional<Fraction>& bar_onset = line.events[bar_beginning(beginnings, event)].onset;
  const Meter* meter = meter_in_bar(passage, found.bar);
  if (meter == nullptr || !bar_onset || !found.onset) return std::nullopt;
  return beat_at(*meter, *bar_onset, *found.onset);
}

std::optional<Fraction> time_between(const Event& one, const Event& other) noexcept {
  if (!one.onset || !other.onset) return std::nullopt;
  return sum(*other.onset, {-one.onset->numerator, one.onset->denominator});
}

}  // namespace fingerturn
