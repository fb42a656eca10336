#include "rules/together.hpp"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace fingerturn {
namespace {

/// The events of a line that take time and whose onset is known.
std::vector<const EventAnalysis*> timed_events(const Line& line, const LineAnalysis& analysis) {
  std::vector<const EventAnalysis*> timed;
  timed.reserve(analysis.events.size());
  for (const EventAnalysis& entry : analysis.events) {
    const Event& event = line.events[entry.event];
    if (event.onset && !event.grace) timed.push_back(&entry);
  }
  return timed;
}

bool kinds_differ(Rotation one, Rotation other) noexcept {
  const auto is_kind = [](Rotation rotation) {
    return rotation == Rotation::single_rotation || rotation == Rotation::double_rotation;
  };
  return one != other && is_kind(one) && is_kind(other);
}

void compare(const EventAnalysis& right, const EventAnalysis& left, Together& together) {
  if (!right.side || !left.side) return;
  ++together.onsets;
  // The same side of the hand is the other direction in the other hand.
  ++(*right.side == *left.side ? together.contrary : together.parallel);
  if (kinds_differ(right.rotation, left.rotation)) {
    together.kinds_differ.push_back({right.event, left.event, right.rotation, left.rotation});
  }
}

}  // namespace

std::optional<Together> hands_together(const Passage& passage, const PassageAnalysis& analysis) {
  if (passage.lines.size() != 2 || passage.lines[0].hand == passage.lines[1].hand) {
    return std::nullopt;
  }
  const std::size_t right = passage.lines[0].hand == Hand::right ? 0 : 1;
  const std::size_t left = 1 - right;
  const auto of_right = timed_events(passage.lines[right], analysis.lines[right]);
  const auto of_left = timed_events(passage.lines[left], analysis.lines[left]);
  if (of_right.empty() || of_left.empty()) return std::nullopt;
  Together together;
  for (std::size_t r = 0, l = 0; r < of_right.size() && l < of_left.size();) {
    const Fraction onset = *passage.lines[right].events[of_right[r]->event].onset;
    const Fraction other = *passage.lines[left].events[of_left[l]->event].onset;
    if (onset == other) compare(*of_right[r], *of_left[l], together);
    const bool next_right = onset <= other;
    if (other <= onset) ++l;
    if (next_right) ++r;
  }
  return together;
}

}  // namespace fingerturn
