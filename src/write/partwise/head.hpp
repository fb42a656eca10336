#pragma once

#include "fingerturn/score.hpp"
#include "write/partwise/xml_text.hpp"

namespace fingerturn {

/// What stands above the part: title, composer, source and the list of parts.
void add_head(const Passage& passage, XmlText& xml);

}  // namespace fingerturn
