#pragma once

#include "fingerturn/rule.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace fingerturn {

inline constexpr Rule kArcRule{
    "arc", "4.4", "Arcs",
    "The events between two reversals of the carry form one arc, the stretch that one rounded "
    "gesture of the forearm can join. A rest, a breath or a skipped bar ends an arc as well. The "
    "event at which the carry first goes the other way begins the new one.",
    "Common practice, no source, as a notion; where it falls is our model, and so our convention."};

/// Rule 4.4: for each strike up to the next rest, breath or skipped bar the number of its arc, from
/// `first` on, by the carry to it.
std::vector<std::size_t> arcs(std::span<const std::optional<double>> carries, std::size_t first);

}  // namespace fingerturn
