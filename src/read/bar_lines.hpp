#pragma once

#include "fingerturn/score.hpp"

namespace fingerturn {

/// Puts a bar line after the last event of a line. Two bar lines with nothing between them are
/// one: a repeat sign outdoes a plain line, and two different ones stand together, also where the
/// first opens what the second closes. A plain line before the first event says nothing.
void append_bar_line(Line& line, BarLineStyle style);

}  // namespace fingerturn
