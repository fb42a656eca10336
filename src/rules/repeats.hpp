#pragma once

#include "fingerturn/analysed.hpp"

#include <cstddef>
#include <cstdint>
#include <map>
#include <vector>

namespace fingerturn {

/// The bars that bring again what earlier ones had: two and more in a row, in which every hand has
/// the same notes in the same rhythm, with the same fingers, turns and findings. Bars with a sign
/// beside their notes (a key or meter that changes, a repeat, words above) are not among them.
/// Rising and apart; what they repeat is not itself among them.
std::vector<BarsAgain> bars_again(const AnalysedPassage& passage);

/// A number for each bar that a passage shows, which those share that have the same notes in the
/// same rhythm with the same fingers.
std::map<std::int32_t, std::size_t> bar_kinds(const AnalysedPassage& passage);

}  // namespace fingerturn
