#pragma once

#include "fingerturn/report.hpp"
#include "text/text_out.hpp"
#include "write/text/columns.hpp"
#include "write/text/signs.hpp"

#include <cstddef>

namespace fingerturn {

/// Draws bars one after another as systems of rows, as wide as the style allows: whole bars, and a
/// bar that is wider than a system divided between beats where that is possible.
void draw_systems(TextOut& out, const BarSequence& bars, const TextStyle& style);

/// The width of the row names, which the foot of the report is aligned to.
inline constexpr std::size_t kLabelWidth = 10;

}  // namespace fingerturn
