#pragma once

#include "fingerturn/score.hpp"
#include "write/notated/value.hpp"

#include <optional>

namespace fingerturn {

/// The ticks of a whole note in which every time of a passage is a whole number, and so is every
/// value down to the shortest that is written. None where a time is not known, or beyond exact
/// arithmetic.
std::optional<Ticks> ticks_in_whole(const Passage& passage);

/// A time of that passage in ticks.
constexpr Ticks in_ticks(Fraction time, Ticks ticks_in_whole) noexcept {
  return time.numerator * (ticks_in_whole / time.denominator);
}

}  // namespace fingerturn
