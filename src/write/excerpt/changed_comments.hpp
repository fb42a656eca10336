#pragma once

#include "fingerturn/excerpt.hpp"
#include "fingerturn/score.hpp"

#include <span>
#include <string>

namespace fingerturn {

/// What turns otherwise in notes that were cut out of a passage, as comments of the notation.
std::string changed_comments(const Passage& whole, const Passage& here,
                             std::span<const ChangedTurn> changed);

}  // namespace fingerturn
