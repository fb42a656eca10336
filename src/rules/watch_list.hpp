#pragma once

#include "fingerturn/analysis.hpp"
#include "rules/strike.hpp"

#include <optional>
#include <span>
#include <vector>

namespace fingerturn {

/// Everything in a line that deserves a look, in the order of the events and, for one event, in
/// the order of the rules (docs/rules.md, 5 and 6). The events are those of the strikes, complete.
std::vector<Finding> watch_list(const Line& line, std::span<const Strike> strikes,
                                std::span<const EventAnalysis> events,
                                std::optional<int> reach_semitones);

/// Finds anew what is said of rows of bars, where only some of the events are left.
void renew_rows(const Line& line, std::span<const EventAnalysis> events,
                std::vector<Finding>& findings);

}  // namespace fingerturn
