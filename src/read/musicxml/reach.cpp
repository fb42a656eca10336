#include "read/musicxml/reach.hpp"

#include <cstdlib>
#include <optional>

namespace fingerturn {

bool fingers_clash(const Note& one, const Note& other, Hand hand) {
  if (!one.finger || !other.finger) return false;
  const int key = midi_number(one.pitch);
  const int other_key = midi_number(other.pitch);
  if (one.finger == other.finger) {
    return *one.finger != kThumb || std::abs(key - other_key) > kNeighbours;
  }
  const int span = span_between(hand, *one.finger, key, *other.finger, other_key);
  const FingerSpans spans = spans_of(*one.finger, *other.finger, std::nullopt);
  return span < spans.least_practical || span > spans.widest_practical;
}

}  // namespace fingerturn
