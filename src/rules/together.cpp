#include "rules/together.hpp"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace fingerturn {
namespace {

/// The events of a line that take time and whose onset is known.
std::vector<AnalysedEvent> timed_events(const AnalysedLine& line) {
  std::vector<AnalysedEvent> timed;
  timed.reserve(line.size());
  for (const AnalysedEvent event : line) {
    if (event.written.onset && !event.written.grace) timed.push_back(event);
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

std::optional<Together> hands_together(const AnalysedPassage& passage) {
  const std::optional<AnalysedLine> right = passage.of_hand(Hand::right);
  const std::optional<AnalysedLine> left = passage.of_hand(Hand::left);
  if (!right || !left) return std::nullopt;
  const std::vector<AnalysedEvent> of_right = timed_events(*right);
  const std::vector<AnalysedEvent> of_left = timed_events(*left);
  if (of_right.empty() || of_left.empty()) return std::nullopt;
  Together together;
  for (std::size_t r = 0, l = 0; r < of_right.size() && l < of_left.size();) {
    const Fraction onset = *of_right[r].written.onset;
    const Fraction other = *of_left[l].written.onset;
    if (onset == other) compare(of_right[r].found, of_left[l].found, together);
    const bool next_right = onset <= other;
    if (other <= onset) ++l;
    if (next_right) ++r;
  }
  return together;
}

}  // namespace fingerturn
