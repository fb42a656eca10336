#pragma once

#include "fingerturn/analysed.hpp"

#include <string>

namespace fingerturn {

/// Adds a map of the whole passage in one row of cells, a bar each, darker where there are more
/// doubles, with a line under those that are shown; nothing where no places were asked for.
void add_places_map(std::string& out, const AnalysedPassage& passage);

}  // namespace fingerturn
