#pragma once

#include "write/notated/notated.hpp"

namespace fingerturn {

/// Where the beams of a bar begin: every `group` ticks from `first` on.
struct BeamGroups {
  Ticks first = 0;  ///< 0 or below
  Ticks group = 1;
  Ticks wide = 1;  ///< the same for what has nothing shorter than eighths
  Ticks unit = 1;  ///< what every length is a multiple of that is not in a tuplet
};

/// The groups of a meter; a bar that is shorter than it, an upbeat, is taken for its end. Quarters
/// where no meter is known.
BeamGroups beam_groups(const Meter* meter, Ticks bar_length, bool is_upbeat, Ticks ticks_in_whole);

/// Sets the beams and tuplets of a voice. Source of the groups: E. Gould, Behind Bars (2011), from
/// memory.
void group_voice(NotatedVoice& voice, const BeamGroups& groups);

}  // namespace fingerturn
