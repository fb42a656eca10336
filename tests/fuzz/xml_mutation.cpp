#include "xml_mutation.hpp"

#include <sstream>
#include <vector>

#include <pugixml.hpp>

namespace fingerturn::tests {
namespace {

/// What can be changed in a document; not the root, without which it is none.
class Parts : public pugi::xml_tree_walker {
 public:
  std::vector<pugi::xml_node> elements;
  std::vector<pugi::xml_node> texts;
  std::vector<pugi::xml_attribute> attributes;

  bool for_each(pugi::xml_node& node) override {
    if (node.type() == pugi::node_pcdata) texts.push_back(node);
    if (node.type() != pugi::node_element) return true;
    if (depth() > 0) elements.push_back(node);
    for (const pugi::xml_attribute attribute : node.attributes()) attributes.push_back(attribute);
    return true;
  }
};

/// One of the parts, or the empty part, with which nothing can be done.
template <typename Part>
Part one_of(const std::vector<Part>& parts, std::mt19937_64& engine) {
  return parts.empty() ? Part() : parts[engine() % parts.size()];
}

/// An element that is within the other is only moved before it.
bool exchange(pugi::xml_node one, pugi::xml_node other) {
  pugi::xml_node mark = one.parent().insert_child_before(pugi::node_comment, one);
  const bool moved = !other.parent().insert_move_before(one, other).empty();
  if (moved) mark.parent().insert_move_before(other, mark);
  mark.parent().remove_child(mark);
  return moved;
}

template <typename Part>
bool replace(const std::vector<Part>& parts, std::mt19937_64& engine) {
  Part part = one_of(parts, engine);
  const std::string value = one_of(parts, engine).value();
  return value != part.value() && part.set_value(value.c_str());
}

bool change(const Parts& parts, std::mt19937_64& engine) {
  const pugi::xml_node element = one_of(parts.elements, engine);
  const pugi::xml_node other = one_of(parts.elements, engine);
  switch (engine() % 6) {
    case 0:
      return element.parent().remove_child(element);
    case 1:
      return !element.parent().insert_copy_after(element, element).empty();
    case 2:
      return other.previous_sibling() != element &&
             !other.parent().insert_move_before(element, other).empty();
    case 3:
      return exchange(element, other);
    case 4:
      return replace(parts.attributes, engine);
    default:
      return replace(parts.texts, engine);
  }
}

}  // namespace

std::optional<std::string> change_xml(const std::string& text, std::mt19937_64& engine) {
  pugi::xml_document document;
  if (!document.load_buffer(text.data(), text.size(), pugi::parse_full, pugi::encoding_utf8)) {
    return std::nullopt;
  }
  Parts parts;
  document.traverse(parts);
  if (!change(parts, engine)) return std::nullopt;
  std::ostringstream changed;
  document.save(changed, "", pugi::format_raw | pugi::format_no_declaration, pugi::encoding_utf8);
  return changed.str();
}

}  // namespace fingerturn::tests
