#include "write/partwise/xml_text.hpp"

namespace fingerturn {
namespace {

std::string_view name_of_tag(std::string_view tag) { return tag.substr(0, tag.find(' ')); }

}  // namespace

void XmlText::add_line(std::string_view xml) {
  text_.append(indent(), ' ');
  text_ += xml;
  text_ += '\n';
}

void XmlText::open(std::string_view tag) {
  add_line(fmt::format("<{}>", tag));
  open_.emplace_back(name_of_tag(tag));
}

void XmlText::close() {
  const std::string name = std::move(open_.back());
  open_.pop_back();
  add_line(fmt::format("</{}>", name));
}

void XmlText::add(std::string_view tag) { add_line(fmt::format("<{}/>", tag)); }

void XmlText::add(std::string_view tag, std::string_view text) {
  add_line(fmt::format("<{}>{}</{}>", tag, escaped_markup(text), name_of_tag(tag)));
}

}  // namespace fingerturn
