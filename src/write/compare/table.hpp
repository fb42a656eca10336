#pragma once

#include "fingerturn/compare.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace fingerturn {

/// A number of the table, with a cell for each fingering.
struct ResultsRow {
  std::string_view label;
  std::vector<std::string> cells;
};

/// The rows of the table; those that would say nothing are left out.
std::vector<ResultsRow> results_rows(const HandComparison& hand);

/// What each fingering of a hand comes to: a row for each number, a column for each fingering.
/// Where there are more columns than fit, several tables.
std::string results_table(const HandComparison& hand, const TextStyle& style);

}  // namespace fingerturn
