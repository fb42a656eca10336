#pragma once

#include "write/page/ink/skyline.hpp"
#include "write/page/staff/bars_in_system.hpp"

#include <cstddef>
#include <vector>

namespace fingerturn {

/// How far the loudness of a hand has been drawn; it follows a system into the next.
struct OpenLoudness {
  std::size_t dynamic = 0;          ///< the next, in ScoreSigns::dynamics
  std::size_t hairpin = 0;          ///< the next, in ScoreSigns::hairpins
  std::vector<std::size_t> open{};  ///< the hairpins that have begun and go on
};

/// The dynamics and hairpins of a hand in a system, on the side of its staff where no ribbon is,
/// clear of all that is there: those that follow closely on one line. `alone`: no other hand has a
/// staff, so that this one shows what stands at the other's.
Inks draw_loudness(const BarsInSystem& system, Hand hand, bool alone, OpenLoudness& open,
                   const Skyline& sky);

}  // namespace fingerturn
