#include "well_formed.hpp"

#include <nlohmann/json.hpp>
#include <pugixml.hpp>

namespace fingerturn::properties {

bool is_json(const std::string& text) { return nlohmann::json::accept(text); }

bool is_xml(const std::string& text) {
  return pugi::xml_document().load_buffer(text.data(), text.size(), pugi::parse_full,
                                          pugi::encoding_utf8);
}

}  // namespace fingerturn::properties
