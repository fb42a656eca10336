#pragma once

#include "write/page/ink/skyline.hpp"
#include "write/page/staff/bars_in_system.hpp"
#include "write/page/staff/loudness.hpp"
#include "write/page/staff/slurs.hpp"

#include <cstddef>
#include <map>

namespace fingerturn {

/// The ties of a hand that have begun and not ended, by key.
struct TieFrom {
  double x = 0;
  double y = 0;
  bool above = false;
};
using OpenTies = std::map<int, TieFrom>;

/// What a hand's staff takes from a system into the next.
struct OpenBows {
  OpenTies ties;
  OpenSlurs slurs;
  OpenLoudness loudness;
};

/// What stands on the staff of a hand in a system, its highest line at 0: notes, rests, ties,
/// slurs, tuplets and signs. What goes on is left in `open`. `alone`: no other hand has a staff.
Inks draw_staff(const BarsInSystem& system, const Line& line, std::size_t hand, bool alone,
                OpenBows& open);

}  // namespace fingerturn
