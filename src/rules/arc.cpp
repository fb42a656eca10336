#include "rules/arc.hpp"

#include <cstddef>

namespace fingerturn {

void add_arcs(std::span<const Strike> strikes, std::span<EventAnalysis> events) {
  std::size_t arc = 0;
  double way = 0;  // the last move of the arc; none yet is 0
  for (std::size_t i = 0; i < events.size(); ++i) {
    const double carry = events[i].carry.value_or(0);
    const bool opens = i > 0 && strikes[i].separated;
    const bool reverses = carry * way < 0;
    if (opens || reverses) ++arc;
    // The way to the place where an arc opens after a rest belongs to no arc.
    if (opens) {
      way = 0;
    } else if (carry != 0) {
      way = carry;
    }
    events[i].arc = arc;
  }
}

}  // namespace fingerturn
