#pragma once

#include "fingerturn/score.hpp"
#include "read/reporter.hpp"

/// What is looked at once a passage has been read.
namespace fingerturn {

/// Warns of every bar whose note values do not add up to the meter. A hand's first bar (a pick-up),
/// its last bar, and a bar next to a repeat sign or double bar may be short.
void check_bars(const Passage& passage, Reporter& reporter);

/// Warns where both hands play and have not the same number of bars, and of the first bar that is
/// longer in one of them, where that is not told as a bar that does not add up.
void check_hands(const Passage& passage, Reporter& reporter);

/// Warns of a line that looks as if its fingers had been written where octaves stand, as in
/// "C4 D2 E3 F1": it has no finger, all its octaves are finger numbers, and most of its steps are
/// wider than an octave.
void check_digits(const Passage& passage, Reporter& reporter);

}  // namespace fingerturn
