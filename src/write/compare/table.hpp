#pragma once

#include "fingerturn/compare.hpp"

#include <string>

namespace fingerturn {

/// What each fingering of a hand comes to: a row for each number, a column for each fingering.
/// Where there are more columns than fit, several tables.
std::string results_table(const HandComparison& hand, const TextStyle& style);

}  // namespace fingerturn
