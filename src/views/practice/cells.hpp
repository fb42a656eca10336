#pragma once

#include "views/practice/cutting.hpp"

#include <vector>

namespace fingerturn {

/// The few notes of a hand, in some bars, at which something is to be learned: every double with
/// the note before it, every passing with its three notes, every far or fast carry with the notes
/// around it, every leap with its two. The same notes, fingers and turns are given once.
std::vector<PracticeMusic> cells_of(const Cutting& cutting, Hand hand, BarRange bars);

}  // namespace fingerturn
