#include "rules/turn/gesture.hpp"

namespace fingerturn {

std::vector<Gesture> gestures_of(std::span<const Strike> strikes) {
  std::vector<Gesture> gestures;
  for (std::size_t i = 0; i < strikes.size(); ++i) {
    const bool opens = i == 0 || strikes[i].separated || strikes[i].is_level() ||
                       strikes[i - 1].is_level() || strikes[i - 1].open_ended;
    if (opens) gestures.push_back({i, i});
    gestures.back().end = i + 1;
  }
  return gestures;
}

}  // namespace fingerturn
