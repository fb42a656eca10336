#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"
#include "rules/strike.hpp"

#include <string_view>

namespace fingerturn {

/// Sources of the passing of fingers.
inline constexpr std::string_view kPassingSources =
    "The passing is common practice, no source; that the turn follows the finger also here: T. "
    "Matthay, The First Principles of Pianoforte Playing (1905), section 49. How far fingers pass "
    "is "
    "our convention.";

inline constexpr Rule kThumbUnderRule{
    "thumb-under", "3.1", "Thumb under",
    "Between neighbouring single notes of one gesture, the way on the keyboard as seen from the "
    "hand (toward its fifth or its thumb side) is compared with the step of the fingers. Where the "
    "two disagree, fingers pass one another. If the thumb arrives, it passes under. Repeated keys, "
    "double notes and level events cross nothing. Fingers pass only where a hand can pass: the "
    "thumb and 2, 3 or 4 up to five semitones, a fourth, as in the arpeggios of the handbooks; the "
    "thumb and 5 up to four; two other fingers up to three. Further apart the arm carries the "
    "hand, "
    "and the place is a leap (5.6).",
    kPassingSources};

inline constexpr Rule kFingerOverThumbRule{
    "finger-over-thumb", "3.2", "Finger over the thumb",
    "As in 3.1, but the thumb is the finger that leaves: the arriving finger passes over it.",
    kPassingSources};

inline constexpr Rule kFingerCrossingRule{
    "finger-crossing", "3.3", "Finger crossing",
    "As in 3.1, but the thumb takes no part: one finger passes another, as 3 does over 5.",
    kPassingSources};

/// Rules 3.1 to 3.3: what passes between two neighbouring strikes of one gesture.
Crossing crossing_between(Hand hand, const Strike& from, const Strike& to) noexcept;

}  // namespace fingerturn
