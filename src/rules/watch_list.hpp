#pragma once

#include "fingerturn/analysis.hpp"
#include "rules/strike.hpp"

#include <span>
#include <vector>

namespace fingerturn {

/// Everything in a line that deserves a look, in the order of the events and, for one event, in
/// the order of the rules (docs/rules.md, 5).
std::vector<Finding> watch_list(const Line& line, std::span<const Strike> strikes);

}  // namespace fingerturn
