#include "rules/missing_finger.hpp"

namespace fingerturn {

std::optional<Side> side_of_outer_finger(const Strike& strike) noexcept {
  if (!strike.is_single_note()) return std::nullopt;
  if (strike.arrival.lowest == kThumb) return Side::toward_thumb;
  if (strike.arrival.highest == kFifth) return Side::toward_fifth;
  return std::nullopt;
}

}  // namespace fingerturn
