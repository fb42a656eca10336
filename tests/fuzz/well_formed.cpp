#include "well_formed.hpp"

#include <algorithm>

#include <nlohmann/json.hpp>
#include <pugixml.hpp>

namespace fingerturn::properties {

bool is_json(const std::string& text) { return nlohmann::json::accept(text); }

bool is_xml(const std::string& text) {
  return pugi::xml_document().load_buffer(text.data(), text.size(), pugi::parse_full,
                                          pugi::encoding_utf8);
}

bool only_shows(std::string_view text) {
  const auto is_control = [](unsigned char byte) {
    return (byte < 0x20 && byte != '\n' && byte != '\t') || byte == 0x7F;
  };
  if (std::any_of(text.begin(), text.end(), is_control)) return false;
  // In UTF-8 what acts begins with one of these and goes on up to this byte.
  struct Acting {
    std::string_view beginning;
    char first;
    char last;
  };
  for (const Acting& acting :
       {Acting{"\xC2", '\x80', '\x9F'}, Acting{"\xD8", '\x9C', '\x9C'},
        Acting{"\xE2\x80", '\x8E', '\x8F'}, Acting{"\xE2\x80", '\xA8', '\xAE'},
        Acting{"\xE2\x81", '\xA6', '\xAF'}, Acting{"\xEF\xBF", '\xB9', '\xBB'},
        Acting{"\xF3\xA0\x80", '\x80', '\xBF'}, Acting{"\xF3\xA0\x81", '\x80', '\xBF'}}) {
    for (std::size_t at = text.find(acting.beginning); at != std::string_view::npos;
         at = text.find(acting.beginning, at + 1)) {
      const std::string_view rest = text.substr(at + acting.beginning.size());
      if (!rest.empty() && rest[0] >= acting.first && rest[0] <= acting.last) return false;
    }
  }
  return true;
}

}  // namespace fingerturn::properties
