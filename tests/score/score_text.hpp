#pragma once

#include "fingerturn/score.hpp"

#include <string>

/// The whole of a score as text, so that tests can compare scores and show where they differ. It
/// is independent of the writers. An event is a line of its own: bar, onset, value ("?" where not
/// known) and notes; a note that is held and not struck stands in parentheses, alternative fingers
/// after a stroke.
///
///     passage "Lantern Street"
///     meter 4/4 from bar 1
///     right hand
///     |:
///     1  0    1/8  C4:1+E4:3~
///     1  1/8  1/8  ^D4:2 ,
///     |
///     2  1/8  1/4  (E4)
namespace fingerturn::tests {

std::string score_text(const Score& score);
std::string line_text(const Line& line);

}  // namespace fingerturn::tests
