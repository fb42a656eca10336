#include "hand/span_table.hpp"

namespace fingerturn {

SpanTable::SpanTable(std::optional<int> reach_semitones) {
  for (Finger one = kThumb; one <= kFifth; ++one) {
    for (Finger other = kThumb; other <= kFifth; ++other) {
      if (one != other) spans_.at(one).at(other) = spans_of(one, other, reach_semitones);
    }
  }
}

bool SpanTable::is_practical(Finger near, Finger far, std::int32_t width) const noexcept {
  constexpr std::int32_t kNeighbours = 2;
  if (near == far) return near == kThumb && width <= kNeighbours;
  const FingerSpans& spans = of(near, far);
  const std::int32_t span = far > near ? width : -width;
  return span >= spans.least_practical && span <= spans.widest_practical;
}

}  // namespace fingerturn
