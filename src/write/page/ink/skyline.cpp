#include "write/page/ink/skyline.hpp"

#include <algorithm>
#include <cmath>

namespace fingerturn {
namespace {

constexpr double kPerSpace = 4;
constexpr double kNothing = 1e9;

}  // namespace

Skyline::Skyline(double width)
    : tops_(static_cast<std::size_t>(std::max(width, 1.0) * kPerSpace) + 1, kNothing),
      bottoms_(tops_.size(), -kNothing) {}

std::size_t Skyline::place_of(double x) const {
  const double place =
      std::clamp(std::floor(x * kPerSpace), 0.0, static_cast<double>(tops_.size() - 1));
  return static_cast<std::size_t>(place);
}

void Skyline::add(const Box& box) {
  for (std::size_t i = place_of(box.left); i <= place_of(box.right); ++i) {
    tops_[i] = std::min(tops_[i], box.top);
    bottoms_[i] = std::max(bottoms_[i], box.bottom);
  }
}

void Skyline::add(const Ink& ink) {
  const auto* bow = std::get_if<BowInk>(&ink.shape);
  if (bow == nullptr) return add(ink.box);
  // Long bows leave much of their box free.
  constexpr int kPieces = 12;
  for (int i = 0; i < kPieces; ++i) {
    const double begin = static_cast<double>(i) / kPieces;
    const double end = static_cast<double>(i + 1) / kPieces;
    const auto [top, bottom] = std::minmax({height_of(*bow, begin), height_of(*bow, end)});
    const double width = bow->to.x - bow->from.x;
    add(Box{bow->from.x + begin * width, top, bow->from.x + end * width, bottom});
  }
}

void Skyline::add(const Inks& inks) {
  for (const Ink& ink : inks) add(ink);
}

double Skyline::top(double left, double right, double none) const {
  double top = none;
  for (std::size_t i = place_of(left); i <= place_of(right); ++i) top = std::min(top, tops_[i]);
  return top;
}

double Skyline::bottom(double left, double right, double none) const {
  double bottom = none;
  for (std::size_t i = place_of(left); i <= place_of(right); ++i) {
    bottom = std::max(bottom, bottoms_[i]);
  }
  return bottom;
}

double Skyline::distance_to(const Skyline& below, double air) const {
  double distance = -kNothing;
  for (std::size_t i = 0; i < std::min(tops_.size(), below.tops_.size()); ++i) {
    if (bottoms_[i] == -kNothing || below.tops_[i] == kNothing) continue;
    distance = std::max(distance, bottoms_[i] - below.tops_[i] + air);
  }
  return distance;
}

}  // namespace fingerturn
