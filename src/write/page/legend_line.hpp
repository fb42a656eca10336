#pragma once

#include "write/page/ink/ink.hpp"
#include "write/shared/used.hpp"

#include <string_view>
#include <vector>

namespace fingerturn {

/// An entry of a page's legend: a small drawing, its upper left corner at 0, and what it means.
struct LegendDrawing {
  Inks inks;
  double width = 0;
  double height = 0;
  std::string_view words;
};

/// What the page shows, in the order of its importance, and nothing else.
std::vector<LegendDrawing> legend_drawings(const Used& used);

}  // namespace fingerturn
