#pragma once

#include "fingerturn/practice.hpp"

#include <optional>
#include <vector>

namespace fingerturn {

/// From half the fastest tempo at which swings can be full up to it, or up to the goal if that is
/// slower, in an even ratio: rising, every swing full. Tempos are in quarters a minute.
std::vector<TempoStep> full_swing_steps(double full_swing_tempo, std::optional<double> goal);

/// From there to a goal that is faster: in an even ratio of at most 1.15, eight steps at most, each
/// with the share of a full swing that there is time for (docs/rules.md, 6.3). None where the goal
/// is not faster.
std::vector<TempoStep> smaller_swing_steps(double full_swing_tempo, std::optional<double> goal);

}  // namespace fingerturn
