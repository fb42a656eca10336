#include "rules/turn/side.hpp"

namespace fingerturn {

FingerStep finger_step(const Strike& from, const Strike& to) noexcept {
  if (!from.departure.known() || !to.arrival.known()) return FingerStep::unknown;
  const int before = from.departure.doubled_middle();
  const int now = to.arrival.doubled_middle();
  if (now == before) return FingerStep::same;
  return now > before ? FingerStep::toward_fifth : FingerStep::toward_thumb;
}

std::optional<Side> side_of(FingerStep step) noexcept {
  switch (step) {
    case FingerStep::toward_fifth:
      return Side::toward_fifth;
    case FingerStep::toward_thumb:
      return Side::toward_thumb;
    case FingerStep::unknown:
    case FingerStep::same:
      break;
  }
  return std::nullopt;
}

}  // namespace fingerturn
