#include "fingering/way_view.hpp"

namespace fingerturn {

bool WayView::passes(std::size_t grip) const noexcept {
  if (grip == 0) return false;
  const Fingered before = at(grip - 1);
  const Fingered now = at(grip);
  if (now.grip.opens || now.grip.count != 1 || before.grip.count != 1) return false;
  const Finger leaves = before.choice.leaves[0];
  const Finger strikes = now.choice.strikes[0];
  if ((leaves == kThumb) == (strikes == kThumb)) return false;
  const std::int32_t travel = now.grip.keys[0].across - before.grip.keys[0].across;
  return strikes == kThumb ? travel > 0 : travel < 0;
}

std::size_t differing_key(const WayView& one, const WayView& other, std::size_t grip) noexcept {
  const Fingered left = one.at(grip);
  const Fingered right = other.at(grip);
  std::size_t key = 0;
  while (key < left.grip.count) {
    const GripKey& here = left.grip.keys.at(key);
    const bool shown = here.struck && here.given == 0;
    if (shown && left.choice.strikes.at(key) != right.choice.strikes.at(key)) break;
    ++key;
  }
  return key;
}

}  // namespace fingerturn
