#pragma once

#include "write/notated/notated.hpp"

#include <cstdint>
#include <map>

namespace fingerturn {

/// Sets the accidentals that the heads of a bar need in a key, on the staff of a hand: a sign holds
/// to the end of its bar in its octave, and a tied head needs none.
void set_signs(NotatedHand& hand, KeySignature key);

/// The key in which the fewest notes of a passage need an accidental; of several, the one with the
/// fewest signs.
KeySignature key_with_fewest_signs(const Passage& passage);

}  // namespace fingerturn
