#include "rules/turn/level.hpp"

namespace fingerturn {

bool is_level(const Strike& strike) noexcept {
  constexpr std::size_t kFewestInChord = 3;
  if (strike.note_count >= kFewestInChord) return true;
  return strike.note_count == 2 && strike.arrival.lowest == kThumb &&
         strike.arrival.highest == kFifth;
}

}  // namespace fingerturn
