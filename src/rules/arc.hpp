#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"
#include "rules/strike.hpp"

#include <span>

namespace fingerturn {

inline constexpr Rule kArcRule{
    "arc", "4.4", "Arcs",
    "The events between two reversals of the carry form one arc, the stretch that one rounded "
    "gesture of the forearm can join. A rest, a breath or a skipped bar ends an arc as well. The "
    "event at which the carry first goes the other way begins the new one.",
    "Common practice, no source, as a notion; where it falls is our model, and so our convention."};

/// Rule 4.4: gives each event the number of its arc. The carry must be known.
void add_arcs(std::span<const Strike> strikes, std::span<EventAnalysis> events);

}  // namespace fingerturn
