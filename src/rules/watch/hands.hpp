#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"

namespace fingerturn {

inline constexpr Rule kHandsRule{
    "hands", "5.10", "The hands in each other's way",
    "Both hands are on one key at a time, or a hand strikes beyond all keys that the other has "
    "down "
    "and so reaches past it. It is said once for a bar, for information.",
    "Common practice, no source; the level is our convention."};

/// Rule 5.10: adds findings to the watch list of the hand that strikes; of the right hand where
/// both strike together. Both lines must be there, and events without an onset are passed over.
void find_hands(const Passage& passage, PassageAnalysis& analysis);

}  // namespace fingerturn
