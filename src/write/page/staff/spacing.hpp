#pragma once

#include "write/page/staff/moments.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace fingerturn {

/// Where the moments of a bar stand in its system.
struct SpacedBar {
  double begin = 0;  ///< its left bar line
  double end = 0;
  std::vector<double> moments;  ///< the left edges of their heads
};

/// How wide the things are that stand before the first moment of a bar, after its bar line, and
/// after its last, before the next bar line.
struct BarEnds {
  double before = 0;
  double after = 0;
};

/// Places bars one after another from `begin` on: each moment as far from the last as their inks
/// and swings need, and further the longer it is, as engraved music has it; `stretch` says how much
/// further.
std::vector<SpacedBar> spaced(std::span<const MeasuredBar> bars, std::span<const BarEnds> ends,
                              double begin, double stretch);

/// Where a bar ends that has these moments, placed like that.
double end_of(std::span<const Moment> moments, const BarEnds& ends, double begin, double stretch);

/// The middles of the nodes of a moment whose heads begin at x; of a rolled chord, one after
/// another.
std::vector<double> node_places(const HandMoment& moment, double x);

}  // namespace fingerturn
