#pragma once

#include "write/page/ink/skyline.hpp"
#include "write/page/staff/moments.hpp"
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

/// A stretch of bars that stand in one system.
struct BarsInSystem {
  std::span<const MeasuredBar> bars;
  std::span<const SpacedBar> places;
  double first = 0;  ///< where the first thing may begin, after clef and key
};

/// What stands on the staff of a hand in a system, its highest line at 0: notes, rests, ties,
/// tuplets and signs. Ties that go on are left in `ties`.
Inks draw_staff(const BarsInSystem& system, std::size_t hand, OpenTies& ties);

}  // namespace fingerturn
