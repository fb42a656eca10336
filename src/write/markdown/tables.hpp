#pragma once

#include "text/text_out.hpp"
#include "write/markdown/part.hpp"
#include "write/text/legend.hpp"

#include <string>
#include <vector>

namespace fingerturn {

/// A table for each system of a part: the bars, and a row for each thing that is said of the notes.
void add_tables(TextFlow& flow, const PagePart& part);

/// A section with what the rows and signs mean; nothing where there is nothing to explain.
void add_legend(std::string& out, const std::vector<LegendEntry>& entries);

}  // namespace fingerturn
