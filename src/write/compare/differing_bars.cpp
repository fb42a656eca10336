#include "write/compare/differing_bars.hpp"

#include <algorithm>
#include <cstdint>
#include <set>
#include <utility>

namespace fingerturn {
namespace {

void add_bar(std::vector<BarRange>& runs, std::int32_t bar, bool goes_on) {
  if (goes_on && !runs.empty()) {
    runs.back().last = bar;
  } else {
    runs.push_back({bar, bar});
  }
}

/// What was found of the struck events of these numbers, which rise.
LineAnalysis only_events(const LineAnalysis& line, const std::vector<std::size_t>& numbers) {
  LineAnalysis kept;
  kept.hand = line.hand;
  for (const std::size_t number : numbers) {
    if (number < line.events.size()) kept.events.push_back(line.events[number]);
  }
  for (const HeldKey& key : line.held) {
    const bool stays =
        std::ranges::binary_search(kept.events, key.event, {}, &EventAnalysis::event);
    if (stays) kept.held.push_back(key);
  }
  return kept;
}

}  // namespace

DifferingBars::DifferingBars(const Comparison& comparison)
    : written_(&comparison.fingerings.front().passage.written()) {
  find_bars(comparison);
  first_.places.emplace();
  for (const BarRange& run : differing_) first_.places->push_back({run, {}});
  for (const Line& line : written_->lines) first_.lines.emplace_back().hand = line.hand;
  for (const HandComparison& hand : comparison.hands) add_hand(hand);
}

void DifferingBars::find_bars(const Comparison& comparison) {
  std::set<std::int32_t> differing;
  std::set<std::int32_t> all;
  for (const HandComparison& hand : comparison.hands) {
    for (const DifferingEvent& event : hand.differing) differing.insert(event.bar);
    for (const BarAgreement& in_bar : hand.agreement) all.insert(in_bar.bar);
  }
  bool differed = false;
  for (const std::int32_t bar : all) {
    const bool differs = differing.contains(bar);
    add_bar(differs ? differing_ : alike_, bar, differs == differed);
    differed = differs;
  }
}

void DifferingBars::add_hand(const HandComparison& hand) {
  std::vector<std::size_t> shown;
  for (std::size_t number = 0; number < hand.lines.front().size(); ++number) {
    if (first_.shows(hand.bar_of(number))) shown.push_back(number);
  }
  if (shown.empty()) return;
  std::vector<AnalysedLine>& ribbons = hands_.emplace_back();
  for (const AnalysedLine& line : hand.lines) {
    found_.push_back(only_events(line.found(), shown));
    ribbons.emplace_back(line.written(), found_.back());
  }
  for (LineAnalysis& line : first_.lines) {
    if (line.hand == hand.hand) line = ribbons.front().found();
  }
}

}  // namespace fingerturn
