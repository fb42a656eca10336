#include "write/page/staff/endings.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace fingerturn {
namespace {

/// The bracket of an ending, or of its part in a system, on the line 0.
Inks bracket(const BarsInSystem& system, const RepeatEnding& ending) {
  constexpr double kThickness = 0.16;
  constexpr double kHook = 2;
  constexpr double kSize = 1.7;
  constexpr double kInside = 0.3;
  const auto bar_of = [](const MeasuredBar& bar) { return bar.bar->bar; };
  const auto begin = std::ranges::lower_bound(system.bars, ending.first_bar, {}, bar_of);
  const auto end = std::ranges::upper_bound(system.bars, ending.last_bar, {}, bar_of);
  if (begin == end) return {};
  const auto first = static_cast<std::size_t>(begin - system.bars.begin());
  const auto last = static_cast<std::size_t>(end - system.bars.begin()) - 1;
  const double left = (first == 0 ? system.first : system.places[first].begin) + kInside;
  const double right = system.places[last].end - kInside;
  Inks inks{line_ink(InkKind::ending, {left, 0}, {right, 0}, kThickness)};
  if (bar_of(*begin) == ending.first_bar && !begin->goes_on) {
    inks.push_back(line_ink(InkKind::ending, {left, 0}, {left, kHook}, kThickness));
    inks.push_back(
        text_ink(InkKind::ending, {ending.numbers, {left + 2 * kInside, kHook - kInside}, kSize}));
  }
  const MeasuredBar& closing = system.bars[last];
  if (bar_of(closing) == ending.last_bar && closing.ends && !ending.is_open) {
    inks.push_back(line_ink(InkKind::ending, {right, 0}, {right, kHook}, kThickness));
  }
  return inks;
}

}  // namespace

Inks draw_endings(const BarsInSystem& system, const Skyline& sky) {
  constexpr double kAir = 0.6;
  if (system.signs == nullptr || system.bars.empty()) return {};
  const std::vector<RepeatEnding>& endings = system.signs->endings;
  const std::int32_t first_bar = system.bars.front().bar->bar;
  Inks drawn;
  for (auto ending = std::ranges::lower_bound(endings, first_bar, {}, &RepeatEnding::last_bar);
       ending != endings.end() && ending->first_bar <= system.bars.back().bar->bar; ++ending) {
    Inks inks = bracket(system, *ending);
    if (inks.empty()) continue;
    const Box box = box_of(inks);
    move_all(inks, 0, sky.top(box.left, box.right, 0) - kAir - box.bottom);
    append(drawn, std::move(inks));
  }
  return drawn;
}

}  // namespace fingerturn
