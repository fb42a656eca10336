#include "views/find/measures.hpp"

#include "score/timeline.hpp"

#include <cstdlib>

namespace fingerturn {
std::vector<int> shape_of(const StruckNotes& struck) {
  std::vector<int> shape;
  for (const Note* note : struck) {
    if (note == struck.front()) continue;
    shape.push_back(letter_position(note->pitch) - letter_position(struck.front()->pitch));
  }
  return shape;
}

WantedMove move_between(Pitch before, Pitch now) {
  const int letters = letter_position(now) - letter_position(before);
  const int semitones = midi_number(now) - midi_number(before);
  WantedMove move{.letters = std::abs(letters), .semitones = std::abs(semitones)};
  if (semitones != 0) move.way = semitones > 0 ? 1 : -1;
  return move;
}

std::optional<Fraction> pace_of(const Event& first, const Event& second, const Event& third) {
  const std::optional<Fraction> before = time_between(first, second);
  const std::optional<Fraction> now = time_between(second, third);
  if (!before || !now || before->numerator == 0) return std::nullopt;
  const auto inverse = reduced(before->denominator, before->numerator);
  return inverse ? product(*now, *inverse) : std::nullopt;
}

}  // namespace fingerturn
