#pragma once

#include "fingering/terms.hpp"

/// Written by tests/bench/fit; docs/fingering.md tells how they were fitted.
namespace fingerturn {

inline constexpr Weights kFittedWeights{
    931,    // stretch
    355,    // small-span
    413,    // large-span
    1307,   // position-change-count
    0,      // position-change-size
    968,    // weak-finger
    431,    // three-four-five
    0,      // three-to-four
    119,    // four-on-black
    2884,   // thumb-on-black
    2246,   // five-on-black
    0,      // thumb-passing
    412,    // third-finger
    1191,   // chord-span
    6420,   // chord-beyond-practical
    9785,   // same-finger
    0,      // change-on-repeat
    3730,   // quick-repeat
    889,    // quick-shift
    157,    // slow-shift
    851,    // far-shift
    2018,   // fingers-cross
    4208,   // change-while-held
    1334,   // finger-again
    286,    // shift-over-two
    681,    // shift-over-rest
    16000,  // off-handbook
    1500,   // off-figure
    6000,   // off-printed
    4000,   // off-repeat
    500,    // off-sequence
};

}  // namespace fingerturn
