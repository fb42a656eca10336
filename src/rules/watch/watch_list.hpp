#pragma once

#include "fingerturn/analysis.hpp"
#include "rules/strike.hpp"
#include "rules/tempo.hpp"
#include "rules/turn/missing_finger.hpp"
#include "rules/watch/leap.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace fingerturn {

/// Everything in a line that deserves a look (docs/rules.md, 5 and 6). It is taken event by event,
/// each with what is known of it, in their order.
class WatchList {
 public:
  WatchList(const Line& line, std::optional<int> reach_semitones)
      : line_(line), reach_semitones_(reach_semitones) {}

  /// Takes the next event, and what lies between it and the one before it, if there is one.
  void add(const EventAnalysis& entry, const Strike& strike, const Approach& approach);
  /// The findings in the order of the events and, for one event, in the order of the rules.
  std::vector<Finding> take();

 private:
  void find_in_chord(const Strike& strike, std::size_t index);
  void find_between(const Approach& approach, const Strike& strike, const EventAnalysis& entry);

  const Line& line_;
  std::optional<int> reach_semitones_;
  std::vector<Finding> findings_;
  std::vector<MissingRow> missing_rows_;
  std::vector<FastBars> fast_bars_;
};

/// Puts findings in the order of the events; those of one event stay as they are.
void put_in_order(std::vector<Finding>& findings);

/// Finds anew what is said of rows of bars, where only some of the events are left.
void renew_rows(const Line& line, std::span<const EventAnalysis> events,
                std::vector<Finding>& findings);

}  // namespace fingerturn
