#include "read/musicxml/place.hpp"

#include <cmath>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// The beat from 1, to a thousandth.
double beat_at(const WrittenPart& part, const WrittenMeasure& measure, Ticks tick) {
  constexpr double kThousand = 1000;
  const double quarters = static_cast<double>(tick) / static_cast<double>(part.ticks_per_quarter);
  return std::round((1 + quarters * measure.beat_type / 4) * kThousand) / kThousand;
}

}  // namespace

std::string musical_place(const WrittenPart& part, const WrittenNote& note, Hand hand) {
  const WrittenMeasure& measure = part.measures[note.measure];
  return fmt::format("bar {}, {} hand, beat {}", measure.bar, to_string(hand),
                     beat_at(part, measure, note.tick));
}

std::string musical_place(const WrittenPart& part, const WrittenMeasure& measure, Ticks tick) {
  return fmt::format("bar {}, beat {}", measure.bar, beat_at(part, measure, tick));
}

}  // namespace fingerturn
