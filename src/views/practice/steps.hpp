#pragma once

#include "fingerturn/practice.hpp"
#include "views/practice/cutting.hpp"

#include <vector>

namespace fingerturn {

/// The steps that a place needs, in their order; the last leads into the bars around and, where it
/// lies within eight bars, together with a place that comes before it in the plan.
std::vector<PracticeStep> steps_of(const Cutting& cutting, const PlannedPlace& place,
                                   const std::vector<PlannedPlace>& earlier);

/// The bars with one before and one after them, where those are there.
BarRange with_bars_around(const Passage& passage, BarRange bars);

}  // namespace fingerturn
