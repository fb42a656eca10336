#pragma once

#include "fingering/figures.hpp"
#include "fingering/grips.hpp"

#include <vector>

/// Figures in which the hand stays in its place, each for a good while.
namespace fingerturn {

/// Octaves whose notes are struck one after the other, two octaves or more with the same note
/// first: the thumb and, on white keys, the fifth finger, on black ones the fourth (common
/// practice, no source).
std::vector<Figure> broken_octaves(const std::vector<Grip>& grips);

/// Twelve single notes or more, none of them struck twice in a row, on five neighbouring keys of a
/// scale that lie within a fifth: a finger for each, if the thumb is on a white key (common
/// practice, no source). None shares a note with a figure that is there already.
std::vector<Figure> five_finger_figures(const std::vector<Grip>& grips,
                                        const std::vector<Figure>& others);

}  // namespace fingerturn
