#pragma once

#include <string>

namespace fingerturn::properties {

/// Whether a text is one JSON document, or well-formed XML. The libraries that tell are compiled
/// once for all targets.
bool is_json(const std::string& text);
bool is_xml(const std::string& text);

}  // namespace fingerturn::properties
