#pragma once

#include "fingerturn/pitch.hpp"

#include <cstdint>
#include <string>

/// Notes without an octave as places on the line of fifths: ... Bb is -2, F -1, C 0, G 1, D 2 ...
/// An interval is a distance on that line, so that adding one spells the note.
namespace fingerturn {

/// How far apart two spellings of one key lie: B is 5, C flat -7.
inline constexpr int kEnharmonicFifths = 12;

/// The place of a letter with an accidental of `alter` semitones.
int fifths_of(Step step, int alter) noexcept;
/// The pitch at a place within an octave. The accidental must be within two semitones.
Pitch pitch_at(int fifths, int octave) noexcept;
/// How many semitones the key lies above C, from 0 to 11.
int semitones_above_c(int fifths) noexcept;
/// "B-flat", "F-sharp", "C".
std::string spoken_note(int fifths);

}  // namespace fingerturn
