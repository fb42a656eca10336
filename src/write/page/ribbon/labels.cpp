#include "write/page/ribbon/labels.hpp"

#include "write/page/ink/skyline.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <deque>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr double kLabel = 1.65;

/// The frame of a number that leads to the list.
Ink flag_frame(const Ink& number) {
  constexpr double kInset = 0.28;
  const Box& box = number.box;
  return plate_ink(number.kind, {box.left - kInset, box.top, box.right + kInset, box.bottom}, 0.2,
                   InkStyle::flag);
}

/// What a label covers.
Box covered(const Ink& label) {
  return label.kind == InkKind::watch_flag ? flag_frame(label).box : label.box;
}

bool overlap(const Box& one, const Box& other, double air) {
  return one.left < other.right + air && other.left < one.right + air && one.top < other.bottom &&
         other.top < one.bottom;
}

std::string carry_words(double carry) {
  const double size = std::abs(carry);
  const bool is_whole = size == std::floor(size);
  return fmt::format("{}{:.{}f}", carry > 0 ? "→" : "←", size, is_whole ? 0 : 1);
}

}  // namespace

void append_labels(const EventAnalysis& event, double x, const WatchNumbers& watch,
                   std::vector<RibbonLabel>& labels) {
  const double carry = event.carry.value_or(0);
  if (std::abs(carry) >= 1) labels.push_back({InkKind::carry, x, carry_words(carry)});
  const auto [first, last] = watch.equal_range(event.event);
  for (auto number = first; number != last; ++number) {
    labels.push_back({InkKind::watch_flag, x, std::to_string(number->second)});
  }
}

void draw_labels(const std::vector<RibbonLabel>& labels, bool above, double end, Inks& inks) {
  constexpr double kAir = 0.3;
  constexpr double kReach = kNodeRadius + kRing;
  constexpr double kRow = 1.9;
  constexpr std::size_t kLastLabels = 24;  // more do not stand within one label's width
  Skyline sky(end + 4);
  sky.add(inks);
  std::deque<Box> placed;
  for (const RibbonLabel& label : labels) {
    const bool is_flag = label.kind == InkKind::watch_flag;
    Ink ink = text_ink(label.kind, {label.words, {label.x, 0}, kLabel, Anchor::middle},
                       is_flag ? InkStyle::strong : InkStyle::plain);
    ink.move(std::min(0.0, end - kAir - ink.box.right), 0);
    const double left = ink.box.left - kAir;
    const double right = ink.box.right + kAir;
    const double y = above ? sky.top(left, right, -kReach) - kAir - ink.box.bottom
                           : sky.bottom(left, right, kRibbonHeight + kReach) + kAir - ink.box.top;
    ink.move(0, y);
    const auto is_taken = [&](const Box& other) { return overlap(covered(ink), other, kAir); };
    while (std::ranges::any_of(placed, is_taken)) ink.move(0, above ? -kRow : kRow);
    placed.push_back(covered(ink));
    if (placed.size() > kLastLabels) placed.pop_front();
    if (is_flag) inks.push_back(flag_frame(ink));
    inks.push_back(std::move(ink));
  }
}

}  // namespace fingerturn
