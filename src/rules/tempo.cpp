#include "rules/tempo.hpp"

#include "score/timeline.hpp"
#include "text/numbers.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr double kSecondsInMinute = 60;
constexpr double kQuartersInWhole = 4;

/// Quarter notes from one event to the next; 0 where not known or no time at all.
double quarters_between(const Event& before, const Event& now) noexcept {
  if (!before.onset || !now.onset || before.grace || now.grace) return 0;
  // One division only, so that plain note values come out exactly.
  const auto [begin, begin_parts] = *before.onset;
  const auto [end, end_parts] = *now.onset;
  const double length = static_cast<double>(end) * static_cast<double>(begin_parts) -
                        static_cast<double>(begin) * static_cast<double>(end_parts);
  const double parts = static_cast<double>(begin_parts) * static_cast<double>(end_parts);
  return std::max(kQuartersInWhole * length / parts, 0.0);
}

/// The tempo at an event in quarters a minute; 0 where not known.
double tempo_at(const Passage& passage, const Event& event,
                const std::optional<double>& asked) noexcept {
  double quarters_per_minute = 0;
  if (asked) {
    quarters_per_minute = *asked;
  } else if (const Tempo* tempo = tempo_in_bar(passage, event.bar)) {
    quarters_per_minute = tempo->quarters_per_minute();
  }
  return std::isfinite(quarters_per_minute) ? std::max(quarters_per_minute, 0.0) : 0;
}

double tempo_of(const EventAnalysis& entry) noexcept {
  return *entry.swing_rate * *entry.full_swing_tempo / kFullSwings;
}

bool goes_on(const FastBars& bars, std::int32_t bar, double quarters_per_minute) noexcept {
  constexpr double kSameTempo = 1e-6;  // in proportion
  const double difference = std::abs(bars.quarters_per_minute - quarters_per_minute);
  return bar <= bars.last + 1 && difference <= kSameTempo * quarters_per_minute;
}

std::string struck_words(const Event& event) {
  std::string words;
  for (const Note& note : event.notes) {
    if (!note.held) words += (words.empty() ? "" : "+") + to_string(note.pitch);
  }
  return words;
}

Finding finding_of(const Line& line, const FastBars& bars) {
  const Event& event = line.events[bars.event];
  const std::string where = bars.first == bars.last
                                ? fmt::format("bar {} asks for", bars.first)
                                : fmt::format("bars {} to {} ask for up to", bars.first, bars.last);
  return {kSwingRateRule.id, WatchLevel::info, bars.event, bars.index,
          fmt::format("At quarter = {} {} {} swings a second, so at {} in bar {} there is time for "
                      "{:.0f} % of a full swing; full swings up to quarter = {}.",
                      tempo_number(bars.quarters_per_minute), where,
                      std::round(bars.swing_rate * 10) / 10, struck_words(event), event.bar,
                      std::floor(kFullSwings / bars.swing_rate * 100),
                      tempo_not_above(bars.full_swing_tempo))};
}

}  // namespace

std::optional<double> swing_size(const EventAnalysis& entry) noexcept {
  if (!entry.swing_rate) return std::nullopt;
  return *entry.swing_rate > kFullSwings ? kFullSwings / *entry.swing_rate : 1.0;
}

std::optional<double> Pace::seconds() const noexcept {
  if (quarters == 0 || quarters_per_minute == 0) return std::nullopt;
  return kSecondsInMinute * quarters / quarters_per_minute;
}

Pace pace_between(const Passage& passage, const Event& before, const Event& now,
                  const std::optional<double>& quarters_per_minute) noexcept {
  return {quarters_between(before, now), tempo_at(passage, before, quarters_per_minute)};
}

bool is_short_rest(const Event& before, const Event& now, const Pace& pace) noexcept {
  if (now.bar > before.bar + 1) return false;
  if (!before.onset || !now.onset) return true;  // a rest whose value nobody wrote
  if (pace.quarters == 0 || !before.duration) return false;
  const double rest = pace.quarters - kQuartersInWhole * to_double(*before.duration);
  const double tempo = pace.quarters_per_minute;
  return tempo > 0 ? kSecondsInMinute * rest < tempo : rest <= 1;
}

void set_swing_rate(const Pace& pace, EventAnalysis& entry) noexcept {
  const auto [quarters, tempo] = pace;
  if (quarters == 0 || !entry.swings) return;
  const double swings = *entry.swings;
  if (swings > 0) entry.full_swing_tempo = kFullSwings * kSecondsInMinute * quarters / swings;
  if (tempo > 0) entry.swing_rate = swings * tempo / (kSecondsInMinute * quarters);
}

void add_to_fast_bars(const Line& line, const EventAnalysis& entry, std::vector<FastBars>& rows) {
  const double rate = entry.swing_rate.value_or(0);
  if (rate <= kFullSwings) return;
  const std::int32_t bar = line.events[entry.event].bar;
  const double tempo = tempo_of(entry);
  if (rows.empty() || !goes_on(rows.back(), bar, tempo)) {
    rows.push_back({.first = bar, .last = bar, .quarters_per_minute = tempo});
  }
  FastBars& row = rows.back();
  row.last = std::max(row.last, bar);
  if (rate <= row.swing_rate) return;
  row.swing_rate = rate;
  row.full_swing_tempo = *entry.full_swing_tempo;
  row.event = entry.event;
  row.index = entry.index;
}

void find_swing_rates(const Line& line, std::span<const FastBars> rows,
                      std::vector<Finding>& findings) {
  for (const FastBars& row : rows) findings.push_back(finding_of(line, row));
}

}  // namespace fingerturn
