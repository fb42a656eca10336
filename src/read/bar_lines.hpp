#pragma once

#include "fingerturn/score.hpp"

namespace fingerturn {

/// Puts a bar line after the last event of a line. Two bar lines with nothing between them are
/// one, and a repeat sign outdoes a plain line; a plain line before the first event says nothing.
void append_bar_line(Line& line, BarLineStyle style);

}  // namespace fingerturn
