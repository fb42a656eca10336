#pragma once

#include "write/page/staff/staff.hpp"
#include "write/page/staff/system.hpp"

#include <vector>

namespace fingerturn {

/// Where the staves of so many hands begin: after the brace that joins them.
double begin_of_staves(std::size_t hands) noexcept;

/// What a system follows and shares with those before it.
struct SystemState {
  KeySignature key;                       ///< that holds where it begins
  std::vector<OpenBows>* open = nullptr;  ///< of each hand, into the system and out of it
  bool is_last = false;
  MusicStyle style{};
};

/// Draws bars that are placed as a system: staves, ribbons, bar lines and the brace.
System draw_system(const RibbonsOfHands& hands, const BarsInSystem& bars, const SystemState& state,
                   const WatchNumbersOfLines& watch);

}  // namespace fingerturn
