#pragma once

#include "fingering/costs.hpp"
#include "fingering/figures.hpp"
#include "fingering/paths.hpp"
#include "fingerturn/score.hpp"

#include <span>
#include <vector>

namespace fingerturn {

/// What the fingers of a path are taken over from: figures that it fingers throughout as is usual,
/// and else fingers that are given where a group of notes comes again. In the order of the line.
std::vector<UsualFingers> usual_in(const Line& line, const FingerTask& task, const Path& path,
                                   std::span<const Figure> figures);

}  // namespace fingerturn
