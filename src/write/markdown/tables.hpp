#pragma once

#include "text/text_out.hpp"
#include "write/markdown/part.hpp"

namespace fingerturn {

/// A table for each system of a part: the bars, and a row for each thing that is said of the notes.
void add_tables(TextFlow& flow, const PagePart& part);

}  // namespace fingerturn
