#pragma once

#include "read/musicxml/bar_numbers.hpp"
#include "read/musicxml/written_note.hpp"
#include "read/reporter.hpp"

#include <string_view>
#include <vector>

#include <pugixml.hpp>

namespace fingerturn {

/// A measure of one part: the element that holds its music, and its number.
struct MeasureElement {
  pugi::xml_node music;
  PrintedNumber number;
};

/// Reads what a part plays, measure by measure.
WrittenPart read_part(const std::vector<MeasureElement>& measures, Reporter& reporter);

}  // namespace fingerturn
