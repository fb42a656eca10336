#include "rules/watch_list.hpp"

#include "rules/chord_fingers.hpp"
#include "rules/curl.hpp"
#include "rules/finger_moved.hpp"
#include "rules/missing_finger.hpp"
#include "rules/span_watch.hpp"
#include "rules/tempo.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

void put_in_order(std::vector<Finding>& findings) {
  std::stable_sort(findings.begin(), findings.end(), [](const Finding& left, const Finding& right) {
    return left.index < right.index;
  });
}

/// What is to be watched within one event of several notes.
void find_in_chord(const Line& line, const Strike& strike, std::size_t index,
                   std::optional<int> reach_semitones, std::vector<Finding>& findings) {
  find_one_finger_twice(line, strike, index, findings);
  find_crossed_in_chord(line, strike, index, findings);
  find_spans_in_chord(line, strike, index, reach_semitones, findings);
  find_curl(line, strike, index, findings);
}

bool neighbours_in_gesture(std::span<const Strike> strikes, std::span<const EventAnalysis> events,
                           std::size_t index) {
  return index > 0 && events[index].gesture == events[index - 1].gesture &&
         strikes[index - 1].is_single_note() && strikes[index].is_single_note();
}

}  // namespace

std::vector<Finding> watch_list(const Line& line, std::span<const Strike> strikes,
                                std::span<const EventAnalysis> events,
                                std::optional<int> reach_semitones) {
  std::vector<Finding> findings;
  for (std::size_t index = 0; index < strikes.size(); ++index) {
    const Strike& strike = strikes[index];
    if (!strike.is_single_note()) find_in_chord(line, strike, index, reach_semitones, findings);
    if (!neighbours_in_gesture(strikes, events, index)) continue;
    const Strike& before = strikes[index - 1];
    find_span_between(line, before, strike, events[index], reach_semitones, findings);
    find_finger_moved(line, before, strike, events[index], findings);
  }
  find_missing_fingers(line, strikes, findings);
  find_swing_rates(line, events, findings);
  put_in_order(findings);
  return findings;
}

void renew_rows(const Line& line, std::span<const EventAnalysis> events,
                std::vector<Finding>& findings) {
  std::erase_if(findings, [](const Finding& finding) { return finding.rule == kSwingRateRule.id; });
  find_swing_rates(line, events, findings);
  put_in_order(findings);
}

}  // namespace fingerturn
