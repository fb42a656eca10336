#include "score/line_of_fifths.hpp"

#include <array>
#include <cstddef>
#include <string_view>

namespace fingerturn {
namespace {

constexpr int kLettersOfLine = 7;
constexpr int kKeysInOctave = 12;
constexpr int kSemitonesInFifth = 7;
/// The place of F without accidental, where the letters begin.
constexpr int kFirstLetter = -1;

constexpr std::array<Step, kLettersOfLine> kSteps{Step::f, Step::c, Step::g, Step::d,
                                                  Step::a, Step::e, Step::b};

/// Rounded down, and what is left over, also below zero.
struct Division {
  int quotient;
  int remainder;
};

Division divided(int number, int by) {
  const int remainder = (number % by + by) % by;
  return {(number - remainder) / by, remainder};
}

constexpr std::array<std::string_view, 5> kAccidentals{"-double-flat", "-flat", "", "-sharp",
                                                       "-double-sharp"};
constexpr int kNoAccidental = 2;

}  // namespace

int fifths_of(Step step, int alter) noexcept {
  int letter = 0;
  while (kSteps.at(static_cast<std::size_t>(letter)) != step) ++letter;
  return letter + kFirstLetter + kLettersOfLine * alter;
}

Pitch pitch_at(int fifths, int octave) noexcept {
  const Division place = divided(fifths - kFirstLetter, kLettersOfLine);
  return {kSteps.at(static_cast<std::size_t>(place.remainder)),
          static_cast<std::int8_t>(place.quotient), static_cast<std::int8_t>(octave)};
}

int semitones_above_c(int fifths) noexcept {
  return divided(kSemitonesInFifth * fifths, kKeysInOctave).remainder;
}

std::string spoken_note(int fifths) {
  const Pitch pitch = pitch_at(fifths, 0);
  const int accidental = kNoAccidental + pitch.alter;
  return to_string(pitch).substr(0, 1) +
         std::string(kAccidentals.at(static_cast<std::size_t>(accidental)));
}

}  // namespace fingerturn
