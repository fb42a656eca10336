#include "rules/turn/side.hpp"

namespace fingerturn {

FingerStep step_between(const OuterFingers& from, const OuterFingers& to) noexcept {
  const int before = from.doubled_middle();
  const int now = to.doubled_middle();
  if (now == before) return FingerStep::same;
  return now > before ? FingerStep::toward_fifth : FingerStep::toward_thumb;
}

FingerStep finger_step(const Strike& from, const Strike& to) noexcept {
  if (!from.departure.known() || !to.arrival.known()) return FingerStep::unknown;
  return step_between(from.departure, to.arrival);
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
