#pragma once

#include "fingerturn/score.hpp"
#include "write/page/staff/moments.hpp"
#include "write/page/staff/spacing.hpp"

#include <cstddef>
#include <optional>
#include <span>

namespace fingerturn {

/// A stretch of bars that stand in one system.
struct BarsInSystem {
  std::span<const MeasuredBar> bars;
  std::span<const SpacedBar> places;
  double first = 0;                   ///< where the first thing may begin, after clef and key
  const ScoreSigns* signs = nullptr;  ///< of the whole passage
  std::optional<Ticks> ticks{};       ///< of a whole note; none where the times are not known
};

/// Whether a moment of the passage lies before the system's first, or after its end.
bool is_before(const BarsInSystem& system, const BarMoment& at);
bool is_after(const BarsInSystem& system, const BarMoment& at);

/// Where a moment stands in a system: in which of its bars, or parts of one, and where there,
/// between the moments that are drawn by its time.
struct PlaceInSystem {
  std::size_t bar = 0;
  double x = 0;
};

/// The place of a moment; none where its bar is not there or the times are not known.
std::optional<PlaceInSystem> place_of(const BarsInSystem& system, const BarMoment& at);

}  // namespace fingerturn
