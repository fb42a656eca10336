#include "write/page/inks_meet.hpp"

#include <algorithm>

namespace fingerturn::tests {
namespace {

constexpr double kTouch = 0.06;

/// A beam between two places along it.
Box part_of(const BeamInk& beam, double left, double right) {
  const double slope = (beam.to.y - beam.from.y) / (beam.to.x - beam.from.x);
  const double one = beam.from.y + slope * (left - beam.from.x);
  const double other = beam.from.y + slope * (right - beam.from.x);
  return {left, std::min(one, other), right, std::max(one, other) + beam.thickness};
}

Box part_of(const BowInk& bow, double left, double right) {
  const auto height_at = [&](double x) {
    const double way = (x - bow.from.x) / (bow.to.x - bow.from.x);
    return height_of(bow, way);
  };
  const double nearest = std::clamp((bow.from.x + bow.to.x) / 2, left, right);
  const auto [top, bottom] = std::minmax({height_at(left), height_at(right), height_at(nearest)});
  return {left, top, right, bottom};
}

Box part_of(const Ink& ink, double left, double right) {
  if (const auto* beam = std::get_if<BeamInk>(&ink.shape)) return part_of(*beam, left, right);
  if (const auto* bow = std::get_if<BowInk>(&ink.shape)) return part_of(*bow, left, right);
  return ink.box;
}

}  // namespace

bool inks_meet(const Ink& one, const Ink& other) {
  const double left = std::max(one.box.left, other.box.left);
  const double right = std::min(one.box.right, other.box.right);
  if (right - left < kTouch) return false;
  const Box first = part_of(one, left, right);
  const Box second = part_of(other, left, right);
  return std::min(first.bottom, second.bottom) - std::max(first.top, second.top) > kTouch;
}

bool leaves(const Ink& ink, double width, double height) {
  constexpr double kStroke = 0.15;
  return ink.box.left < -kStroke || ink.box.right > width + kStroke || ink.box.top < -kStroke ||
         ink.box.bottom > height + kStroke;
}

}  // namespace fingerturn::tests
