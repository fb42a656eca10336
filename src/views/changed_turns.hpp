#pragma once

#include "fingerturn/analysed.hpp"
#include "fingerturn/excerpt.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace fingerturn {

/// What turns otherwise in events that were cut out of a line: `places` are their places in
/// Line::events there, rising, one for each event of the part.
std::vector<ChangedTurn> changed_turns(const AnalysedLine& whole, const AnalysedLine& part,
                                       std::span<const std::size_t> places);

}  // namespace fingerturn
