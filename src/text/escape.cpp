#include "text/escape.hpp"

#include "text/address.hpp"
#include "text/utf8.hpp"

#include <algorithm>
#include <cstddef>

#include <fmt/core.h>

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

/// Signs that mean something in Markdown wherever they stand.
constexpr std::string_view kAlwaysEscaped = "\\`*_{}[]<>#|&~$^@";
/// Signs that begin a list or a line across the page at the beginning of a line.
constexpr std::string_view kEscapedFirst = "+-=";

/// Where "1." or "1)" would begin a list; nowhere where it does not.
std::size_t end_of_number(std::string_view text) {
  const std::size_t end = text.find_first_not_of("0123456789");
  const bool begins_list =
      end != std::string_view::npos && end > 0 && (text[end] == '.' || text[end] == ')');
  return begins_list ? end : std::string_view::npos;
}

/// Adds signs one by one, each escaped that would be more than itself.
class MarkdownSigns {
 public:
  explicit MarkdownSigns(std::string_view line) : line_(line), number_(end_of_number(line)) {}

  void add(std::size_t begin, std::size_t end, std::string& out) const {
    for (std::size_t at = begin; at < end; ++at) {
      if (means_something(at)) out += '\\';
      out += line_[at];
    }
  }

 private:
  [[nodiscard]] bool means_something(std::size_t at) const {
    const char sign = line_[at];
    if (kAlwaysEscaped.find(sign) != std::string_view::npos || at == number_) return true;
    if (at == 0) return kEscapedFirst.find(sign) != std::string_view::npos;
    // Some renderers make a link of whatever follows "www.".
    return sign == '.' && (line_[at - 1] == 'w' || line_[at - 1] == 'W');
  }

  std::string_view line_;
  std::size_t number_;
};

/// How much of a word is an address: without the signs that end a sentence, where it is one then.
std::size_t length_of_address(std::string_view word) {
  const std::size_t last = word.find_last_not_of(".:@");
  const std::string_view core = word.substr(0, last == std::string_view::npos ? 0 : last + 1);
  if (is_like_address(core)) return core.size();
  return is_like_address(word) ? word.size() : 0;
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
  const MarkdownSigns signs(words);
  std::string out;
  out.reserve(words.size());
  for (std::size_t at = 0; at < words.size();) {
    const std::size_t end = at + std::max<std::size_t>(1, word_of_address(words.substr(at)));
    // Many renderers look for addresses after escapes are undone, but none looks into code.
    if (const std::size_t length = length_of_address(words.substr(at, end - at))) {
      out += fmt::format("`{}`", words.substr(at, length));
      at += length;
    }
    signs.add(at, end, out);
    at = end;
  }
  return out;
}

}  // namespace fingerturn
