#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"
#include "rules/strike.hpp"

#include <vector>

namespace fingerturn {

inline constexpr Rule kFingerMovedRule{
    "finger-moved", "5.9", "The same finger on another key",
    "Neighbouring single notes of a gesture on different keys are taken by the same finger, so "
    "that it must be carried from the one to the other. It is said for information.",
    "Common practice, no source; the level is our convention."};

/// Rule 5.9: adds a finding where two neighbouring strikes of a gesture take different keys with
/// the same finger. `entry` is the event of the second.
void find_finger_moved(const Line& line, const Strike& from, const Strike& to,
                       const EventAnalysis& entry, std::vector<Finding>& findings);

}  // namespace fingerturn
