#pragma once

#include "write/notated/notated.hpp"

#include <vector>

namespace fingerturn {

/// A key that is down for a time, before it is known in which voice it is written. Times are
/// counted from the beginning of the bar.
struct Sounding {
  HeadPlace place;
  Pitch pitch;
  Ticks onset = 0;
  Ticks end = 0;
  bool tied_to = false;
  bool tied_on = false;
};

/// Puts what sounds in a bar into voices: what begins and ends together is a chord, what overlaps
/// stands in two voices, the higher in the upper one. Where more than two overlap, a longer note is
/// tied on where others begin, so that nothing is left out. `sounding` is in the order of onsets.
NotatedHand voices_of(const std::vector<Sounding>& sounding);

}  // namespace fingerturn
