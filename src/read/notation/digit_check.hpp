#pragma once

#include "fingerturn/score.hpp"
#include "read/reporter.hpp"

namespace fingerturn {

/// Warns of a line that looks as if its fingers had been written where octaves stand, as in
/// "C4 D2 E3 F1": it has no finger, all its octaves are finger numbers, and most of its steps are
/// wider than an octave.
void check_digits(const Passage& passage, Reporter& reporter);

}  // namespace fingerturn
