#pragma once

#include "fingerturn/analysis.hpp"
#include "rules/strike.hpp"

namespace fingerturn {

/// A reason that lies in the strike itself.
Reason reason_in(Reason::Form form, const Strike& strike) noexcept;

/// A reason that lies in the step from one strike to another.
Reason reason_in(Reason::Form form, const Strike& from, const Strike& to) noexcept;

}  // namespace fingerturn
