#include "rules/turn/crossing.hpp"

#include "rules/turn/side.hpp"

#include <algorithm>
#include <cstdlib>

namespace fingerturn {
namespace {

/// The side of the hand to which the keys lead.
Side side_of_travel(Hand hand, int from_key, int to_key) {
  const bool rises = to_key > from_key;
  const bool toward_fifth = rises == (hand == Hand::right);
  return toward_fifth ? Side::toward_fifth : Side::toward_thumb;
}

/// How far apart, in semitones, keys may lie for their fingers to pass; our convention.
int widest_passing(Finger one, Finger other) noexcept {
  constexpr int kWithThumb = 5;
  constexpr int kThumbAndFifth = 4;
  constexpr int kWithoutThumb = 3;
  const auto [lower, higher] = std::minmax(one, other);
  if (lower != kThumb) return kWithoutThumb;
  return higher == kFifth ? kThumbAndFifth : kWithThumb;
}

}  // namespace

Crossing crossing_between(Hand hand, const Strike& from, const Strike& to) noexcept {
  if (!from.is_single_note() || !to.is_single_note() || from.key == to.key) return Crossing::none;
  const std::optional<Side> step = side_of(finger_step(from, to));
  if (!step || *step == side_of_travel(hand, from.key, to.key)) return Crossing::none;
  const int widest = widest_passing(from.departure.lowest, to.arrival.lowest);
  if (std::abs(to.key - from.key) > widest) return Crossing::none;
  if (to.arrival.lowest == kThumb) return Crossing::thumb_under;
  if (from.departure.lowest == kThumb) return Crossing::finger_over_thumb;
  return Crossing::finger_crossing;
}

}  // namespace fingerturn
