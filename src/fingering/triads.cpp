#include "fingering/triads.hpp"

#include <algorithm>
#include <cstddef>

namespace fingerturn {
namespace {

/// The two intervals of a triad as it lies under the hand, from the thumb's side, in semitones.
struct Shape {
  std::int32_t near;
  std::int32_t far;

  friend bool operator==(const Shape&, const Shape&) = default;
};

/// Major, minor, diminished and augmented ones, close together and in every inversion. What is one
/// inversion to one hand is another to the other hand, which sees it from the other side.
constexpr std::array<Shape, 7> kEven{{{4, 3}, {3, 4}, {3, 3}, {4, 4}, {5, 4}, {5, 3}, {6, 3}}};
constexpr std::array<Shape, 3> kWideFar{{{3, 5}, {4, 5}, {3, 6}}};

}  // namespace

std::array<Finger, 3> usual_triad_fingers(const Grip& grip) noexcept {
  if (grip.count != 3 || grip.struck_count != 3) return {};
  const Shape shape{grip.keys[1].across - grip.keys[0].across,
                    grip.keys[2].across - grip.keys[1].across};
  if (std::ranges::find(kWideFar, shape) != kWideFar.end()) return {1, 2, 5};
  if (std::ranges::find(kEven, shape) != kEven.end()) return {1, 3, 5};
  return {};
}

}  // namespace fingerturn
