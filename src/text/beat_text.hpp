#pragma once

#include "fingerturn/fraction.hpp"

#include <string>

namespace fingerturn {

/// A beat as it is counted: "3", "2.5", "1.333", with at most three decimals.
std::string beat_text(Fraction beat);

}  // namespace fingerturn
