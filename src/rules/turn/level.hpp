#pragma once

#include "fingerturn/rule.hpp"
#include "rules/strike.hpp"

#include <span>

namespace fingerturn {

inline constexpr Rule kLevelRule{
    "level", "2.4", "Level events",
    "Played level, both sides of the hand going down together, are a chord of three or more notes, "
    "a double note taken by 1 and 5, a double note an octave or more wide whatever its fingers, "
    "and every double note of a row of equal ones: two or more on the same keys with no rest "
    "between, of which no finger that is given contradicts another. No single or double is claimed "
    "and there is no swing. A level event stands alone: the note after it opens a gesture of its "
    "own. Chords, octaves and rows are level whether their fingers are given or not.",
    "Our convention. T. Matthay, The Visible and Invisible in Pianoforte Technique (1932), through "
    "a digest, has the rotary condition made anew for each octave; that the arm carries chords and "
    "octaves is common practice, no source."};

inline constexpr Rule kRolledChordRule{
    "rolled-chord", "2.4", "Rolled chords",
    "A chord that is rolled is no level event: its notes are events of their own, in the order in "
    "which they are rolled, at one moment. They have no time between them, so no swing rate is "
    "claimed at them.",
    "Our convention."};

inline constexpr Rule kOrnamentRule{
    "ornament", "2.4", "Trills and tremolos",
    "Where a note has the sign of a trill or a tremolo, the sides alternate after its stroke, "
    "singles throughout (2.2). On which side it ends is not known, so what follows opens a gesture "
    "of its own.",
    "Our convention."};

/// Rule 2.4: sets why each of the strikes is played level, if it is. They are all that stand
/// between two rests, breaths or skipped bars, since a row of equal double notes is found in them.
void set_levels(const Line& line, std::span<Strike> strikes);

}  // namespace fingerturn
