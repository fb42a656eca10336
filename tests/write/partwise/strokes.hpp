#pragma once

#include "fingerturn/score.hpp"

#include <string>

/// What a passage says, whatever notes it is written with: a length that is tied together is one.
namespace fingerturn::tests {

/// Each stroke of a hand on a line of its own: bar, onset, what is struck and with which fingers,
/// when the key is let go, and whether a gesture ends behind it.
///
///     1 1/8 C#4:2>1 until 1/4 trill .
std::string strokes_of(const Line& line);

/// Title, composer, source, meters, tempos, keys and words, each where it is written.
std::string signatures_of(const Passage& passage);

/// The signs of repeats and double bars, by the bars that they stand at.
std::string bar_signs_of(const Line& line);

}  // namespace fingerturn::tests
