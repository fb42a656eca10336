#pragma once

#include "fingerturn/score.hpp"

#include <cstddef>
#include <vector>

namespace fingerturn {

/// Marks as held every note that a tie leads to: the next note on the same key, in any later event
/// before a rest. All other notes become notes to strike. Gives the places of the ties that lead
/// to nothing, in the order of the line.
std::vector<Span> resolve_ties(Line& line);

/// A tied continuation among these events whose beginning lies before them, and that has no finger
/// of its own, gets the finger that is on its key: so it can be struck where the beginning is cut
/// off. `end` is past the last event.
void finger_ties_into(Line& line, std::size_t begin, std::size_t end);

/// Takes away the ties that lead to nothing.
void drop_ties_to_nothing(Line& line);

}  // namespace fingerturn
