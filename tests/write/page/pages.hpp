#pragma once

#include "fingerturn/fingerturn.hpp"

#include <string>
#include <vector>

#include <pugixml.hpp>

/// Pages as their readers see them: parsed, with their parts found by class.
namespace fingerturn::tests {

/// A score and its analysis, from the notation.
AnalysedScore analysed(const std::string& notation);

/// Parses a document that must be well-formed XML.
pugi::xml_document parsed(const std::string& text);

/// All text in an element, in order.
std::string text_in(const pugi::xml_node& node);

/// The elements below a node that an XPath gives.
std::vector<pugi::xml_node> all_of(const pugi::xml_node& node, const char* path);

}  // namespace fingerturn::tests
