#include "hand/keyboard.hpp"

#include <array>
#include <cstddef>

namespace fingerturn {
namespace {

constexpr int kSemitonesInOctave = 12;
constexpr int kWhiteKeysInOctave = 7;
constexpr int kLowestA = 21;  // MIDI 1.0: A0

/// The twelve keys from A on, in half white keys above it. Source of each: the order of the white
/// and black keys on any piano; a black key half way is our convention (4.1).
constexpr std::array<int, kSemitonesInOctave> kHalfKeysAboveA{
    0,   // A
    1,   // A#, Bb
    2,   // B
    4,   // C
    5,   // C#, Db
    6,   // D
    7,   // D#, Eb
    8,   // E
    10,  // F
    11,  // F#, Gb
    12,  // G
    13,  // G#, Ab
};

}  // namespace

int place_of_key(int midi) noexcept {
  int octave = (midi - kLowestA) / kSemitonesInOctave;
  int semitone = (midi - kLowestA) % kSemitonesInOctave;
  if (semitone < 0) {
    semitone += kSemitonesInOctave;
    --octave;
  }
  const int half_keys = kHalfKeysAboveA.at(static_cast<std::size_t>(semitone));
  return octave * kWhiteKeysInOctave * kQuartersInKey + half_keys * kQuartersInKey / 2;
}

bool is_black_key(int midi) noexcept { return place_of_key(midi) % kQuartersInKey != 0; }

}  // namespace fingerturn
