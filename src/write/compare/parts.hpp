#pragma once

#include "fingerturn/compare.hpp"

#include <string>

/// The parts of a comparison for the terminal.
namespace fingerturn {

/// What each fingering of a hand comes to: a row for each number, a column for each fingering.
/// Where there are more columns than fit, several tables.
std::string results_table(const HandComparison& hand, const TextStyle& style);

/// The places where the fingerings of a hand differ, bar by bar, with what lies between; empty
/// where there are none. As a table or, where that is too wide, one below another.
std::string places_text(const HandComparison& hand, const TextStyle& style);

}  // namespace fingerturn
