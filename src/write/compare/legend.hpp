#pragma once

#include "fingerturn/compare.hpp"
#include "write/text/legend.hpp"

#include <span>
#include <string>
#include <vector>

/// What is said around the tables of a comparison, whatever its form.
namespace fingerturn {

/// "A and B are alike: the same fingers throughout."; for fingerings of which nothing differs.
std::string all_alike_words(const Comparison& comparison);

/// What the rows of the tables say that is not plain from their names, and the signs of the places
/// that differ, where there are any.
std::vector<LegendEntry> comparison_legend(std::span<const Comparison> comparisons);

}  // namespace fingerturn
