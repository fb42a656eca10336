#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"
#include "rules/strike.hpp"

#include <optional>
#include <span>
#include <vector>

namespace fingerturn {

inline constexpr Rule kMissingFingerRule{
    "missing-finger", "2.8", "Missing fingers",
    "An event with a finger missing is undetermined. No guess is made. The watch list names each "
    "row of neighbouring events with fingers missing once, for information.",
    "Our convention."};

inline constexpr Rule kAfterMissingRule{
    "after-missing", "2.8", "After a missing finger",
    "The step after a missing finger is undetermined too. What still follows is kept: a single "
    "thumb plays toward the thumb and a single fifth finger toward the fifth, so their side is "
    "known even there, though not whether they are single or double. That is known again as soon "
    "as the sides of two neighbouring events are, or the same finger plays again (2.6).",
    "Our convention."};

/// Rule 2.8: the side that a single thumb or fifth finger has by itself; none for all others.
std::optional<Side> side_of_outer_finger(const Strike& strike) noexcept;

/// Rule 2.8: adds a finding for each row of neighbouring events with fingers missing.
void find_missing_fingers(const Line& line, std::span<const Strike> strikes,
                          std::vector<Finding>& findings);

}  // namespace fingerturn
