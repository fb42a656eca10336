#include "write/musicxml/legend.hpp"

#include "text/escape.hpp"
#include "write/musicxml/places.hpp"

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// Lines of text between two tags; the line feeds between them are kept from being blank space.
std::string markup_of_lines(std::string_view text) {
  std::string markup;
  for (std::size_t end = text.find('\n'); end != std::string_view::npos; end = text.find('\n')) {
    markup += escaped_markup(text.substr(0, end)) + "&#10;";
    text.remove_prefix(end + 1);
  }
  return markup + escaped_markup(text);
}

}  // namespace

std::string legend_credit(std::string_view legend) {
  legend.remove_suffix(1);
  return fmt::format(
      "<credit page=\"1\"><credit-words xml:lang=\"{}\" default-x=\"80\" default-y=\"60\" "
      "font-size=\"7\" valign=\"bottom\">{}</credit-words></credit>",
      kLegendLanguage, markup_of_lines(legend));
}

}  // namespace fingerturn
