#pragma once

#include "fingerturn/score.hpp"
#include "read/reporter.hpp"

namespace fingerturn {

/// Warns of every bar whose note values do not add up to the meter. A hand's first bar (a pick-up),
/// its last bar, and a bar next to a repeat sign or double bar may be short.
void check_bars(const Passage& passage, Reporter& reporter);

}  // namespace fingerturn
