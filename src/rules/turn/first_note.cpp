#include "rules/turn/first_note.hpp"

#include "rules/turn/missing_finger.hpp"
#include "rules/turn/side.hpp"

namespace fingerturn {

FirstSide first_side(std::span<const Strike> gesture) noexcept {
  for (std::size_t i = 0; i < gesture.size(); ++i) {
    if (i > 0) {
      const FingerStep step = finger_step(gesture[i - 1], gesture[i]);
      // What lies behind a missing finger says nothing about the note before it.
      if (step == FingerStep::unknown) break;
      if (const std::optional<Side> side = side_of(step)) return {opposite(*side), i, true, false};
    }
    if (const std::optional<Side> side = gesture[i].first_change) {
      return {opposite(*side), i, false, true};
    }
  }
  return {side_of_outer_finger(gesture.front()), 0, false, false};
}

}  // namespace fingerturn
