#pragma once

#include "fingerturn/fraction.hpp"

#include <string>

/// Numbers of music as they are read.
namespace fingerturn {

/// A beat as it is counted: "3", "2.5", "1.333", with at most three decimals.
std::string beat_text(Fraction beat);

/// A tempo in quarter notes a minute, to at most two decimals: "96", "72.5".
std::string tempo_number(double quarters_per_minute);

/// A tempo that is not above this one: in whole numbers from 10 on, "83"; below to one decimal.
std::string tempo_not_above(double quarters_per_minute);

}  // namespace fingerturn
