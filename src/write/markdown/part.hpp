#pragma once

#include "fingerturn/report.hpp"
#include "write/markdown/layout.hpp"
#include "write/text/rows.hpp"

#include <array>
#include <cstddef>
#include <string>
#include <vector>

namespace fingerturn {

/// Lines that share their columns on a page.
struct PagePart {
  SharedLines lines;
  PageLayout layout;
};

/// The parts of a passage: both hands above one another, or one after the other where it is not
/// known which notes sound together.
std::vector<PagePart> page_parts(const AnalysedPassage& passage);

/// The rows of words that a page gives below the picture, notes and fingers left out. What the
/// forearm does at a side is said once, in the legend.
inline constexpr std::array kPageRows{Row::rotation, Row::prepare, Row::play, Row::crossing,
                                      Row::held,     Row::carry,   Row::depth};

/// Whether a row is shown in a system: rows that are left out where they have nothing to say are
/// there as soon as one column of it has.
bool shows_row(Row row, const PagePart& part, std::size_t line, const PageSystem& system);

/// The most notes that an event of the system has, at least 1.
std::size_t most_notes(const PagePart& part, std::size_t line, const PageSystem& system);

}  // namespace fingerturn
