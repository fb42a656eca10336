#pragma once

#include "fingering/costs.hpp"
#include "fingering/paths.hpp"

namespace fingerturn {

/// How difficult a line is with the fingers of a path, in a number that music of any length, and
/// either hand, can be compared by: the mean over its strokes of what each asks, for the time that
/// there is for it (docs/fingering.md). 0 where nothing is struck.
double told_difficulty(const LineCosts& costs, const Path& path);

}  // namespace fingerturn
