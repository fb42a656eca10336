#pragma once

#include "fingerturn/rule.hpp"
#include "rules/strike.hpp"

namespace fingerturn {

inline constexpr Rule kLevelRule{
    "level", "2.4", "Level events",
    "A chord of three or more notes, and a double note taken by 1 and 5, is played level: both "
    "sides of the hand go down together, so no single or double is claimed and there is no swing. "
    "It stands alone: the note after it opens a gesture of its own. A chord is level whether its "
    "fingers are given or not.",
    "Our convention. T. Matthay, The Visible and Invisible in Pianoforte Technique (1932), through "
    "a digest, has the rotary condition made anew for each octave; that the arm carries chords and "
    "octaves is common practice, no source."};

/// Rule 2.4: whether an event is played level.
bool is_level(const Strike& strike) noexcept;

}  // namespace fingerturn
