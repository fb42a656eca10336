#pragma once

#include "read/musicxml/written_note.hpp"
#include "read/reporter.hpp"

#include <string_view>
#include <vector>

#include <pugixml.hpp>

namespace fingerturn {

/// A measure of one part: where its music stands and where its number does. In a score by parts
/// they are one element.
struct MeasureElement {
  pugi::xml_node music;
  pugi::xml_node measure;
};

/// Reads what a part plays, measure by measure.
WrittenPart read_part(const std::vector<MeasureElement>& measures, Reporter& reporter);

}  // namespace fingerturn
