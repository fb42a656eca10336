#pragma once

#include "write/page/ink/skyline.hpp"
#include "write/page/staff/bars_in_system.hpp"

namespace fingerturn {

/// The brackets over the endings of repeats in a system, clear of all that is there.
Inks draw_endings(const BarsInSystem& system, const Skyline& sky);

}  // namespace fingerturn
