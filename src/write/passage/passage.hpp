#pragma once

#include "fingerturn/score.hpp"

#include <span>
#include <string>
#include <string_view>

namespace fingerturn {

/// A text as comments of the notation, in lines that fit a terminal of 80 columns.
std::string comment_lines(std::string_view text);

/// The passage notation with comments above the notes: for each passage whole lines, each of which
/// begins with a hash.
std::string write_passage(const Score& score, std::span<const std::string> comments);

}  // namespace fingerturn
