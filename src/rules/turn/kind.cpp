#include "rules/turn/kind.hpp"

namespace fingerturn {

Rotation kind_of(FingerStep step, std::optional<Side> before, std::optional<Side> now) noexcept {
  if (step == FingerStep::unknown) return Rotation::undetermined;
  if (step == FingerStep::same) return Rotation::double_rotation;
  if (!before || !now) return Rotation::undetermined;
  return *before == *now ? Rotation::double_rotation : Rotation::single_rotation;
}

std::optional<int> swings_of(Rotation rotation) noexcept {
  switch (rotation) {
    case Rotation::level:
      return 0;
    case Rotation::single_rotation:
      return 1;
    case Rotation::preparatory:
    case Rotation::double_rotation:
      return 2;
    case Rotation::undetermined:
      break;
  }
  return std::nullopt;
}

}  // namespace fingerturn
