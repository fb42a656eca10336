#pragma once

#include <string>
#include <string_view>

namespace fingerturn::properties {

/// Whether a text is one JSON document, or well-formed XML. The libraries that tell are compiled
/// once for all targets.
bool is_json(const std::string& text);
bool is_xml(const std::string& text);

/// Whether nothing in a text acts instead of being shown: no control character but for tabs and
/// line feeds, no mark of direction, no separator of lines, no tag.
bool only_shows(std::string_view text);

}  // namespace fingerturn::properties
