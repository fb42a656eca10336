#pragma once

#include "write/page/staff/staff_chord.hpp"

#include <vector>

namespace fingerturn {

/// A chord whose place along time is known.
struct PlacedChord {
  StaffChord chord;
  double x = 0;  ///< the left edge of the heads of its moment
};

/// Stems, flags and beams of a voice in a bar, in the order of time. Lengths and slopes as in E.
/// Gould, Behind Bars (2011), from memory.
Inks draw_stems(const std::vector<PlacedChord>& voice);

}  // namespace fingerturn
