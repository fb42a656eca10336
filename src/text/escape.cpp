#include "text/escape.hpp"

#include "text/utf8.hpp"

#include <cstddef>

namespace fingerturn {
namespace {

/// U+FFFE and U+FFFF, which XML 1.0 (section 2.2) allows nowhere.
bool is_forbidden(char32_t value) { return value == 0xFFFE || value == 0xFFFF; }

std::string_view reference_of(char character) {
  switch (character) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    case '\'':
      return "&#39;";
    case '\t':
      return " ";
    default:
      return {};
  }
}

/// Signs that mean something in Markdown wherever they stand. The at sign is there for renderers
/// that make links of addresses.
constexpr std::string_view kAlwaysEscaped = "\\`*_{}[]<>#|&~$^@";
/// Signs that begin a list or a line across the page at the beginning of a line.
constexpr std::string_view kEscapedFirst = "+-=";

/// Whether the sign at this place would be more than itself: "1." and "1)" begin a list, "www." and
/// "://" belong to an address.
bool means_something(std::string_view text, std::size_t at) {
  const char sign = text[at];
  if (kAlwaysEscaped.find(sign) != std::string_view::npos) return true;
  if (at == 0) return kEscapedFirst.find(sign) != std::string_view::npos;
  if (sign == ':') return text.substr(at).starts_with("://");
  if (sign == '.' && (text[at - 1] == 'w' || text[at - 1] == 'W')) return true;
  const bool ends_number = sign == '.' || sign == ')';
  return ends_number && text.find_first_not_of("0123456789") == at;
}

/// Without the blanks at its ends, of which four at the beginning would make it code.
std::string_view trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(' ');
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(' ') - begin + 1);
}

std::string with_blanks_for_tabs(std::string text) {
  for (char& character : text) {
    if (character == '\t') character = ' ';
  }
  return text;
}

}  // namespace

std::string escaped_markup(std::string_view text) {
  const std::string safe = printable(text);
  std::string out;
  out.reserve(safe.size());
  for (std::string_view rest = safe; !rest.empty();) {
    const CodePoint point = first_code_point(rest);
    const std::string_view reference = reference_of(rest.front());
    if (!reference.empty()) {
      out += reference;
    } else {
      out += is_forbidden(point.value) ? kReplacement : rest.substr(0, point.bytes);
    }
    rest.remove_prefix(point.bytes);
  }
  return out;
}

std::string escaped_markdown(std::string_view text) {
  const std::string safe = with_blanks_for_tabs(printable(text));
  const std::string_view words = trimmed(safe);
  std::string out;
  out.reserve(words.size());
  for (std::size_t at = 0; at < words.size(); ++at) {
    if (means_something(words, at)) out += '\\';
    out += words[at];
  }
  return out;
}

}  // namespace fingerturn
