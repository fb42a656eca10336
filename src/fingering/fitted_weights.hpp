#pragma once

#include "fingering/term.hpp"

/// Written by tests/bench/fit; how it was made stands in docs/fingering.md.
namespace fingerturn {

inline constexpr Weights kFittedWeights{
    987,   // stretch
    304,   // small-span
    358,   // large-span
    1273,  // position-change-count
    7,     // position-change-size
    984,   // weak-finger
    397,   // three-four-five
    0,     // three-to-four
    87,    // four-on-black
    2966,  // thumb-on-black
    2244,  // five-on-black
    250,   // thumb-passing
    429,   // third-finger
    1179,  // chord-span
    5541,  // chord-beyond-practical
    9708,  // same-finger
    0,     // change-on-repeat
    3845,  // quick-repeat
    930,   // quick-shift
    248,   // slow-shift
    814,   // far-shift
    1871,  // fingers-cross
    4098,  // change-while-held
    1364,  // finger-again
    280,   // shift-over-two
    671,   // shift-over-rest
};

}  // namespace fingerturn
