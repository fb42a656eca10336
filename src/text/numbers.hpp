#pragma once

#include <string>

/// Tempos in quarter notes a minute as numbers to read.
namespace fingerturn {

/// To at most two decimals: "96", "72.5".
std::string tempo_number(double quarters_per_minute);

/// A tempo that is not above this one: in whole numbers from 10 on, "83"; below to one decimal.
std::string tempo_not_above(double quarters_per_minute);

}  // namespace fingerturn
