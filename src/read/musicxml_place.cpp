#include "read/musicxml_place.hpp"

#include <cmath>

#include <fmt/format.h>

namespace fingerturn {
std::string musical_place(const WrittenPart& part, const WrittenNote& note, Hand hand) {
  constexpr double kThousand = 1000;
  const double quarters =
      static_cast<double>(note.tick) / static_cast<double>(part.ticks_per_quarter);
  const double beat = 1 + quarters * part.measures[note.measure].beat_type / 4;
  return fmt::format("bar {}, {} hand, beat {}", part.measures[note.measure].bar, to_string(hand),
                     std::round(beat * kThousand) / kThousand);
}

}  // namespace fingerturn
