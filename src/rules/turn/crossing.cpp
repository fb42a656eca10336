#include "rules/turn/crossing.hpp"

#include "rules/turn/side.hpp"

namespace fingerturn {
namespace {

/// The side of the hand to which the keys lead.
Side side_of_travel(Hand hand, int from_key, int to_key) {
  const bool rises = to_key > from_key;
  const bool toward_fifth = rises == (hand == Hand::right);
  return toward_fifth ? Side::toward_fifth : Side::toward_thumb;
}

}  // namespace

Crossing crossing_between(Hand hand, const Strike& from, const Strike& to) noexcept {
  if (!from.is_single_note() || !to.is_single_note() || from.key == to.key) return Crossing::none;
  const std::optional<Side> step = side_of(finger_step(from, to));
  if (!step || *step == side_of_travel(hand, from.key, to.key)) return Crossing::none;
  if (to.arrival.lowest == kThumb) return Crossing::thumb_under;
  if (from.departure.lowest == kThumb) return Crossing::finger_over_thumb;
  return Crossing::finger_crossing;
}

}  // namespace fingerturn
