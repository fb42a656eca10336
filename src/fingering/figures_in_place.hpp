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
/// Two keys less than an octave apart that are struck in turn, eight times and more: seconds are a
/// trill, others a tremolo (common practice, no source). Only in 1/32 or faster are they held to as
/// to a handbook. None where another finger is given.
std::vector<Figure> trills_and_tremolos(const std::vector<Grip>& grips);

/// A key that is struck four times and more, in sixteenths or faster: 4-3-2-1, or 3-2-1 where only
/// that comes out even (common practice, no source). None where another finger is given.
std::vector<Figure> repeated_notes(const std::vector<Grip>& grips);

std::vector<Figure> five_finger_figures(const std::vector<Grip>& grips,
                                        const std::vector<Figure>& others);

}  // namespace fingerturn
