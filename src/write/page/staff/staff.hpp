#pragma once

#include "write/page/ink/skyline.hpp"
#include "write/page/staff/moments.hpp"
#include "write/page/staff/slurs.hpp"
#include "write/page/staff/spacing.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <span>
#include <vector>

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
};

/// A stretch of bars that stand in one system.
struct BarsInSystem {
  std::span<const MeasuredBar> bars;
  std::span<const SpacedBar> places;
  double first = 0;  ///< where the first thing may begin, after clef and key
};

/// What stands on the staff of a hand in a system, its highest line at 0: notes, rests, ties,
/// slurs, tuplets and signs. Bows that go on are left in `open`.
Inks draw_staff(const BarsInSystem& system, const Line& line, std::size_t hand, OpenBows& open);

}  // namespace fingerturn
