#include "rules/tempo.hpp"

#include "model/tempo_words.hpp"
#include "model/timeline.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <fmt/format.h>

namespace fingerturn {
namespace {

constexpr double kFullSwings = 10;      // a second
constexpr double kPossibleSwings = 14;  // a second
constexpr double kSecondsInMinute = 60;
constexpr double kQuartersInWhole = 4;

/// Quarter notes from one event to the next; none where not known or no time at all.
std::optional<double> quarters_between(const Event& before, const Event& now) noexcept {
  if (!before.onset || !now.onset || before.grace || now.grace) return std::nullopt;
  // One division only, so that plain note values come out exactly.
  const auto [begin, begin_parts] = *before.onset;
  const auto [end, end_parts] = *now.onset;
  const double length = static_cast<double>(end) * static_cast<double>(begin_parts) -
                        static_cast<double>(begin) * static_cast<double>(end_parts);
  const double parts = static_cast<double>(begin_parts) * static_cast<double>(end_parts);
  if (length <= 0) return std::nullopt;
  return kQuartersInWhole * length / parts;
}

bool is_tempo(double quarters_per_minute) noexcept {
  return std::isfinite(quarters_per_minute) && quarters_per_minute > 0;
}

/// The tempo at an event; none where not known.
std::optional<double> tempo_at(const Passage& passage, const Event& event,
                               std::optional<double> asked) noexcept {
  if (asked) return is_tempo(*asked) ? asked : std::nullopt;
  const Tempo* tempo = tempo_in_bar(passage, event.bar);
  if (tempo == nullptr || !is_tempo(tempo->quarters_per_minute())) return std::nullopt;
  return tempo->quarters_per_minute();
}

/// Neighbouring bars in which swings come too fast, at one tempo.
struct FastBars {
  std::int32_t first = 0;
  std::int32_t last = 0;
  double quarters_per_minute = 0;
  const EventAnalysis* fastest = nullptr;
};

double tempo_of(const EventAnalysis& entry) noexcept {
  return *entry.swing_rate * *entry.full_swing_tempo / kFullSwings;
}

bool goes_on(const FastBars& bars, std::int32_t bar, double quarters_per_minute) noexcept {
  constexpr double kSameTempo = 1e-6;  // in proportion
  const double difference = std::abs(bars.quarters_per_minute - quarters_per_minute);
  return bar <= bars.last + 1 && difference <= kSameTempo * quarters_per_minute;
}

Finding finding_of(const FastBars& bars) {
  const double rate = *bars.fastest->swing_rate;
  const std::string where = bars.first == bars.last
                                ? fmt::format("bar {} asks for", bars.first)
                                : fmt::format("bars {} to {} ask for up to", bars.first, bars.last);
  return {kSwingRateRule.id, rate > kPossibleSwings ? Level::strain : Level::caution,
          bars.fastest->event, bars.fastest->index,
          fmt::format("At quarter = {} {} {} swings a second: let the swings shrink, or "
                      "practise up to quarter = {}.",
                      tempo_number(bars.quarters_per_minute), where, std::round(rate * 10) / 10,
                      tempo_not_above(*bars.fastest->full_swing_tempo))};
}

}  // namespace

void add_swing_rates(const Passage& passage, const Line& line,
                     std::optional<double> quarters_per_minute, std::span<EventAnalysis> events) {
  for (std::size_t i = 1; i < events.size(); ++i) {
    EventAnalysis& entry = events[i];
    const Event& before = line.events[events[i - 1].event];
    const std::optional<double> quarters = quarters_between(before, line.events[entry.event]);
    if (!quarters || !entry.swings) continue;
    const double swings = *entry.swings;
    if (swings > 0) entry.full_swing_tempo = kFullSwings * kSecondsInMinute * *quarters / swings;
    const std::optional<double> tempo = tempo_at(passage, before, quarters_per_minute);
    if (tempo) entry.swing_rate = swings * *tempo / (kSecondsInMinute * *quarters);
  }
}

void find_swing_rates(const Line& line, std::span<const EventAnalysis> events,
                      std::vector<Finding>& findings) {
  std::vector<FastBars> rows;
  for (const EventAnalysis& entry : events) {
    if (entry.swing_rate.value_or(0) <= kFullSwings) continue;
    const std::int32_t bar = line.events[entry.event].bar;
    const double tempo = tempo_of(entry);
    if (rows.empty() || !goes_on(rows.back(), bar, tempo)) {
      rows.push_back({bar, bar, tempo, &entry});
    }
    FastBars& row = rows.back();
    row.last = std::max(row.last, bar);
    if (*entry.swing_rate > *row.fastest->swing_rate) row.fastest = &entry;
  }
  for (const FastBars& row : rows) findings.push_back(finding_of(row));
}

}  // namespace fingerturn
