#include "rules/places.hpp"

#include "rules/tempo.hpp"
#include "rules/turn/missing_finger.hpp"
#include "rules/watch/leap.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <set>
#include <string_view>
#include <utility>

namespace fingerturn {
namespace {

constexpr double kFastCarry = 20;        // white keys a second
constexpr double kQuickPassing = 0.125;  // seconds
constexpr double kSmallSwing = 0.8;
constexpr std::size_t kLeast = 3;  // points
/// How many times the average a bar must ask.
constexpr double kAboveAverage = 1.5;

std::size_t points_of(const Finding& finding) noexcept {
  switch (finding.level) {
    case WatchLevel::info:
      break;
    case WatchLevel::caution:
      return 3;
    case WatchLevel::strain:
      return 5;
  }
  if (finding.rule == kQuickLeapRule.id) return 3;
  return finding.rule == kLeapRule.id ? 2 : 1;
}

/// What each of the bars asks.
class Demands {
 public:
  explicit Demands(const AnalysedPassage& passage) : passage_(passage) {
    for (const std::int32_t bar : bars_of(passage.written())) {
      if (passage.found().shows(bar)) bars_.push_back({.bar = bar});
    }
    for (const AnalysedLine line : passage) add(line);
    if (passage.found().together) add(passage, *passage.found().together);
  }

  std::vector<BarDemand> take() { return std::move(bars_); }

 private:
  void add(const AnalysedLine& line) {
    const std::vector<bool> leaps = add_findings(line);
    for (std::size_t i = 0; i < line.size(); ++i) {
      const auto& [written, found] = line[i];
      add_event(line, i, leaps[found.event], at(written.bar));
    }
  }

  void add_event(const AnalysedLine& line, std::size_t number, bool leaps, BarDemand& bar) const {
    const EventAnalysis& found = line[number].found;
    const bool passes = found.crossing != Crossing::none;
    const bool holds = !line.held_at(found.event).empty();
    bar.doubles += is_in_row(line, number) ? 1U : 0U;
    bar.held += holds && found.rotation == Rotation::double_rotation ? 1U : 0U;
    bar.passings += passes ? 1U : 0U;
    bar.quick_passings += passes && is_quick(line, number) ? 1U : 0U;
    bar.carries += !leaps && is_far_or_fast(line, number) ? 1U : 0U;
    bar.small_swings += swing_size(found).value_or(1) < kSmallSwing ? 1U : 0U;
  }

  /// Gives the places in Line::events to which the hand leaps.
  std::vector<bool> add_findings(const AnalysedLine& line) {
    std::vector<bool> leaps(line.written().events.size());
    std::set<std::pair<std::int32_t, std::string_view>> told;
    for (const Finding& finding : line.found().watch) {
      const std::int32_t bar = line.event_of(finding).bar;
      if (is_leap(finding)) leaps[finding.event] = true;
      // The same information again asks nothing more.
      const bool repeats = finding.level == WatchLevel::info && !is_leap(finding) &&
                           !told.emplace(bar, finding.rule).second;
      if (!repeats) add(finding, at(bar));
    }
    return leaps;
  }

  void add(const AnalysedPassage& passage, const Together& together) {
    for (const KindsDiffer& place : together.kinds_differ) {
      const std::int32_t bar = passage[0].written().events[place.right_event].bar;
      if (passage.found().shows(bar)) ++at(bar).kinds_differ;
    }
  }

  static void add(const Finding& finding, BarDemand& bar) {
    if (finding.rule == kMissingFingerRule.id || finding.rule == kSwingRateRule.id) return;
    const bool leap = is_leap(finding);
    ++(leap ? bar.leaps : bar.findings);
    (leap ? bar.leap_points : bar.finding_points) += points_of(finding);
  }

  [[nodiscard]] BarDemand& at(std::int32_t bar) {
    return *std::ranges::lower_bound(bars_, bar, {}, &BarDemand::bar);
  }

  /// Whether two events of a line, of which one may not be there, are neighbours and both double.
  static bool are_doubles(const AnalysedLine& line, std::size_t first, std::size_t second) {
    if (second >= line.size()) return false;
    const EventAnalysis& before = line[first].found;
    const EventAnalysis& after = line[second].found;
    return before.index + 1 == after.index && before.rotation == Rotation::double_rotation &&
           after.rotation == Rotation::double_rotation;
  }

  static bool is_in_row(const AnalysedLine& line, std::size_t number) {
    return are_doubles(line, number, number + 1) ||
           (number > 0 && are_doubles(line, number - 1, number));
  }

  [[nodiscard]] bool is_far_or_fast(const AnalysedLine& line, std::size_t number) const {
    const double carry = std::abs(line[number].found.carry.value_or(0));
    if (carry >= kFarCarry) return true;
    if (carry == 0) return false;
    const std::optional<double> seconds = seconds_to(line, number);
    return seconds && carry >= kFastCarry * *seconds;
  }

  [[nodiscard]] bool is_quick(const AnalysedLine& line, std::size_t number) const {
    const std::optional<double> seconds = seconds_to(line, number);
    return seconds && *seconds <= kQuickPassing;
  }

  /// From the event before; none where there is none, or the time is not known.
  [[nodiscard]] std::optional<double> seconds_to(const AnalysedLine& line,
                                                 std::size_t number) const {
    if (number == 0) return std::nullopt;
    return pace_between(passage_.written(), line[number - 1].written, line[number].written,
                        passage_.found().quarters_per_minute)
        .seconds();
  }

  AnalysedPassage passage_;
  std::vector<BarDemand> bars_;
};

std::vector<BarDemand> demands_of(const AnalysedPassage& passage) {
  std::vector<BarDemand> bars = Demands(passage).take();
  for (BarDemand& bar : bars) {
    bar.points = bar.doubles + bar.held + bar.passings + bar.quick_passings + bar.carries +
                 bar.small_swings + bar.kinds_differ + bar.leap_points + bar.finding_points;
  }
  return bars;
}

/// The fewest points with which a bar deserves work.
double least_of(const std::vector<BarDemand>& bars) {
  std::size_t sum = 0;
  std::size_t most = 0;
  for (const BarDemand& bar : bars) {
    sum += bar.points;
    most = std::max(most, bar.points);
  }
  const double average = static_cast<double>(sum) / static_cast<double>(bars.size());
  const double least = std::min(kAboveAverage * average, static_cast<double>(most));
  return std::max(least, static_cast<double>(kLeast));
}

}  // namespace

bool is_leap(const Finding& finding) noexcept {
  return finding.rule == kLeapRule.id || finding.rule == kQuickLeapRule.id;
}

std::vector<PracticePlace> places_of(const AnalysedPassage& passage) {
  const std::vector<BarDemand> bars = demands_of(passage);
  std::vector<PracticePlace> places;
  if (bars.empty()) return places;
  const double least = least_of(bars);
  std::size_t shown = 0;  // the bars before this one are in a place, or are in none
  for (std::size_t i = 0; i < bars.size(); ++i) {
    if (static_cast<double>(bars[i].points) < least) continue;
    const std::size_t before = i == 0 ? 0 : i - 1;
    const std::size_t after = std::min(i + 1, bars.size() - 1);
    if (places.empty() || before > shown) places.push_back({{bars[before].bar, 0}, {}});
    places.back().bars.last = bars[after].bar;
    places.back().asking.push_back(bars[i]);
    shown = after + 1;
  }
  return places;
}

std::vector<BarDoubles> doubles_of(const AnalysedPassage& passage) {
  std::vector<BarDoubles> bars;
  for (const std::int32_t bar : bars_of(passage.written())) {
    if (passage.found().shows(bar)) bars.push_back({bar, 0});
  }
  for (const AnalysedLine line : passage) {
    for (const auto& [written, found] : line) {
      if (found.rotation != Rotation::double_rotation) continue;
      ++std::ranges::lower_bound(bars, written.bar, {}, &BarDoubles::bar)->doubles;
    }
  }
  return bars;
}

}  // namespace fingerturn
