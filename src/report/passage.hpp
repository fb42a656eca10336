#pragma once

#include "fingerturn/score.hpp"

#include <span>
#include <string>

namespace fingerturn {

/// The passage notation with comments above the notes: for each passage whole lines, each of which
/// begins with a hash.
std::string write_passage(const Score& score, std::span<const std::string> comments);

}  // namespace fingerturn
