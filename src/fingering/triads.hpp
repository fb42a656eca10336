#pragma once

#include "fingering/grips.hpp"

#include <array>

namespace fingerturn {

/// The fingers that every pianist has on a triad of three keys struck together, the thumb's side
/// first; none (0) where the grip is no triad. From the thumb's side 1-2-5 where the wide gap lies
/// on the fifth finger's side, 1-3-5 in all others (common practice, no source).
std::array<Finger, 3> usual_triad_fingers(const Grip& grip) noexcept;

}  // namespace fingerturn
