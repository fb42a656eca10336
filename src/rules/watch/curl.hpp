#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"
#include "rules/strike.hpp"

#include <cstddef>
#include <vector>

namespace fingerturn {

inline constexpr Rule kCurlRule{
    "curl", "5.8", "Curl",
    "The notes of one event allow no depth in common (4.3): the thumb is on a black key while "
    "another finger is on a white one. The hand goes in between the black keys, or that finger "
    "curls. It is said for information.",
    "That curled fingers are to be watched is common practice, no source; the depths are our "
    "model, and so our convention."};

/// Rule 5.8: adds a finding where the notes of a chord or double note allow no common depth.
void find_curl(const Line& line, const Strike& strike, std::size_t index,
               std::vector<Finding>& findings);

}  // namespace fingerturn
