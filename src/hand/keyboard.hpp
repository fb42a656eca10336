#pragma once

#include "fingerturn/rule.hpp"

namespace fingerturn {

inline constexpr Rule kKeyboardRule{
    "keyboard", "4.1", "The keyboard",
    "Places on the keyboard are measured in white keys, each as wide as the next, from A0, the "
    "lowest. A black key lies half way between its white neighbours. Seven white keys make the "
    "octave, about 16.5 centimetres.",
    "Common practice, no source; the width of a white key, about 23.5 millimetres, is given from "
    "memory, and that a black key lies half way is our convention."};

/// Lengths along the keyboard and into it are whole numbers of quarters of a white key, in which
/// every place of a finger, a hand or the middle of two of them can be written exactly.
inline constexpr int kQuartersInKey = 4;

/// Rule 4.1: where a key lies, in quarters of a white key from A0; its MIDI note number may be any.
int place_of_key(int midi) noexcept;

/// Whether a key is black, which is one that lies between two places of white ones.
bool is_black_key(int midi) noexcept;

}  // namespace fingerturn
