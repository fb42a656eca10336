#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"
#include "rules/turn/side.hpp"

#include <optional>

namespace fingerturn {

inline constexpr Rule kSideChangesRule{
    "side-changes", "2.2", "Single rotation",
    "Every note is played out of a swing to the opposite side. Where the side changes, the note "
    "before has already carried the forearm to the opposite side: the note is a single, one swing.",
    "Common practice, no source."};

inline constexpr Rule kSideStaysRule{
    "side-stays", "2.2", "Double rotation",
    "Where the side stays, the forearm must first swing back and then play: the note is a double, "
    "two swings.",
    "Common practice, no source."};

/// Rules 2.2, 2.6 and 2.8: the kind of a strike that is not the first of its gesture, from its
/// step and the sides of the strike before it and of itself.
Rotation kind_of(FingerStep step, std::optional<Side> before, std::optional<Side> now) noexcept;

/// Rules 2.2 and 2.4: how many swings a kind takes; none where it is not known.
std::optional<int> swings_of(Rotation rotation) noexcept;

}  // namespace fingerturn
