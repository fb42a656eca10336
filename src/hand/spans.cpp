#include "hand/spans.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

FingerSpans fitted(FingerSpans spans, int reach_semitones) noexcept {
  const int reach = std::clamp(reach_semitones, kSmallestReach, kWidestReach);
  for (int* const widest :
       {&spans.widest_relaxed, &spans.widest_comfortable, &spans.widest_practical}) {
    *widest = *widest * reach / kPublishedReach;
  }
  return spans;
}

}  // namespace

FingerSpans spans_of(Finger one, Finger other, std::optional<int> reach_semitones) noexcept {
  const auto [lower, higher] = std::minmax(one, other);
  for (const FingerSpans& spans : kPublishedSpans) {
    if (spans.lower != lower || spans.higher != higher) continue;
    const bool fits = reach_semitones && lower == kThumb;
    return fits ? fitted(spans, *reach_semitones) : spans;
  }
  return {};
}

int span_between(Hand hand, Finger from, int from_key, Finger to, int to_key) noexcept {
  const int semitones = to_key - from_key;
  return (to > from) == (hand == Hand::right) ? semitones : -semitones;
}

SpanTable::SpanTable(std::optional<int> reach_semitones) {
  for (Finger one = kThumb; one <= kFifth; ++one) {
    for (Finger other = kThumb; other <= kFifth; ++other) {
      if (one != other) spans_.at(one).at(other) = spans_of(one, other, reach_semitones);
    }
  }
}

bool SpanTable::is_practical(Finger near, Finger far, std::int32_t width) const noexcept {
  if (near == far) return takes_both(near, width);
  const FingerSpans& spans = of(near, far);
  const std::int32_t span = far > near ? width : -width;
  return span >= spans.least_practical && span <= spans.widest_practical;
}

}  // namespace fingerturn
