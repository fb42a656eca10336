#include "write/json/writer.hpp"

#include "text/utf8.hpp"

#include <algorithm>
#include <iterator>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace fingerturn {
namespace {

/// The replacing handler leaves the library nothing to throw about.
std::string dumped(const nlohmann::json& value) {
  constexpr int kNoIndent = -1;
  return value.dump(kNoIndent, ' ', false, nlohmann::json::error_handler_t::replace);
}

/// Whether JSON writes the text as it is. Most texts are such and are spared the way through the
/// library.
bool is_plain(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char letter) {
    return letter >= ' ' && letter <= '~' && letter != '"' && letter != '\\';
  });
}

/// Adds a character as the escapes that JSON has for its one or two units of UTF-16.
void add_escaped(std::string& out, char32_t value) {
  constexpr char32_t kFirstInTwoUnits = 0x10000;
  const auto add = [&out](char32_t unit) {
    fmt::format_to(std::back_inserter(out), "\\u{:04x}", static_cast<std::uint32_t>(unit));
  };
  if (value < kFirstInTwoUnits) return add(value);
  const char32_t bits = value - kFirstInTwoUnits;
  add(0xD800 + (bits >> 10U));
  add(0xDC00 + (bits & 0x3FFU));
}

/// A text in quotes in which characters that act stand escaped: the same value, and no harm to a
/// terminal or an editor that shows the document.
std::string harmless(std::string_view quoted) {
  std::string out;
  out.reserve(quoted.size());
  while (!quoted.empty()) {
    const CodePoint point = first_code_point(quoted);
    if (acts_on_text(point.value)) {
      add_escaped(out, point.value);
    } else {
      out += quoted.substr(0, point.bytes);
    }
    quoted.remove_prefix(point.bytes);
  }
  return out;
}

}  // namespace

void JsonWriter::value(std::string_view text) {
  if (is_plain(text)) {
    out_.add('"');
    out_.add(text);
    out_.add(kEndOfText);
  } else {
    raw(harmless(dumped(text)));
  }
}

void JsonWriter::exact(double number) { raw(dumped(number)); }

}  // namespace fingerturn
