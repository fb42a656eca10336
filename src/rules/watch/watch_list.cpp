#include "rules/watch/watch_list.hpp"

#include "rules/watch/chord_fingers.hpp"
#include "rules/watch/curl.hpp"
#include "rules/watch/finger_moved.hpp"
#include "rules/watch/span_watch.hpp"

#include <algorithm>

namespace fingerturn {
void put_in_order(std::vector<Finding>& findings) {
  std::ranges::stable_sort(findings, {}, &Finding::index);
}

namespace {

/// Whether the fingers of an event are said to be twisted; then they need not be called crossed
/// too.
bool is_twisted(const std::vector<Finding>& findings, std::size_t index) {
  for (auto finding = findings.rbegin(); finding != findings.rend(); ++finding) {
    if (finding->index != index) break;
    if (finding->rule == kTwistRule.id && finding->level != WatchLevel::info) return true;
  }
  return false;
}

}  // namespace

void WatchList::find_in_chord(const Strike& strike, std::size_t index) {
  if (find_misplaced_finger(line_, strike, index, reach_semitones_, findings_)) return;
  if (find_reversed_in_chord(line_, strike, index, reach_semitones_, findings_)) return;
  find_one_finger_twice(line_, strike, index, findings_);
  find_spans_in_chord(line_, strike, index, reach_semitones_, findings_);
  if (!is_twisted(findings_, index)) find_crossed_in_chord(line_, strike, index, findings_);
  find_curl(line_, strike, index, findings_);
}

void WatchList::find_between(const Approach& approach, const Strike& strike,
                             const EventAnalysis& entry) {
  const bool leaps = find_leap(line_, approach, strike, entry, reach_semitones_, findings_);
  const bool neighbours =
      approach.in_gesture && approach.from->is_single_note() && strike.is_single_note();
  if (!neighbours) return;
  if (leaps) return;
  find_span_between(line_, *approach.from, strike, entry, reach_semitones_, findings_);
  find_finger_moved(line_, *approach.from, strike, entry, findings_);
}

void WatchList::add(const EventAnalysis& entry, const Strike& strike, const Approach& approach) {
  if (!strike.is_single_note()) find_in_chord(strike, entry.index);
  if (approach.from != nullptr) find_between(approach, strike, entry);
  if (!strike.arrival.known()) add_to_missing_rows(line_, entry, missing_rows_);
  add_to_fast_bars(line_, entry, fast_bars_);
}

std::vector<Finding> WatchList::take() {
  find_missing_fingers(missing_rows_, findings_);
  find_swing_rates(line_, fast_bars_, findings_);
  put_in_order(findings_);
  return std::move(findings_);
}

void renew_rows(const Line& line, std::span<const EventAnalysis> events,
                std::vector<Finding>& findings) {
  std::erase_if(findings, [](const Finding& finding) {
    return finding.rule == kSwingRateRule.id || finding.rule == kMissingFingerRule.id;
  });
  std::vector<MissingRow> missing_rows;
  std::vector<FastBars> fast_bars;
  for (const EventAnalysis& entry : events) {
    add_to_missing_rows(line, entry, missing_rows);
    add_to_fast_bars(line, entry, fast_bars);
  }
  find_missing_fingers(missing_rows, findings);
  find_swing_rates(line, fast_bars, findings);
  put_in_order(findings);
}

}  // namespace fingerturn
