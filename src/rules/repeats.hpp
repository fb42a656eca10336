#pragma once

#include "fingerturn/analysed.hpp"

#include <vector>

namespace fingerturn {

/// The bars that bring again what earlier ones had: two and more in a row, in which every hand has
/// the same notes in the same rhythm, with the same fingers, turns and findings. Bars with a sign
/// beside their notes (a key or meter that changes, a repeat, words above) are not among them.
/// Rising and apart; what they repeat is not itself among them.
std::vector<BarsAgain> bars_again(const AnalysedPassage& passage);

}  // namespace fingerturn
