#pragma once

#include "fingerturn/score.hpp"

#include <vector>

namespace fingerturn {

/// Marks as held every note that a tie leads to: the next note on the same key, in any later event
/// before a rest. All other notes become notes to strike. Gives the places of the ties that lead
/// to nothing, in the order of the line.
std::vector<Span> resolve_ties(Line& line);

}  // namespace fingerturn
