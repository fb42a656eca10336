#include "read/musicxml/text.hpp"

#include "text/lower_case.hpp"
#include "text/utf8.hpp"

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr std::string_view kUtf8Mark = "\xEF\xBB\xBF";

enum class Units : std::uint8_t { bytes, utf16_low_first, utf16_high_first };

/// Told by the byte order mark or, without one, by the zero byte beside the first "<" (XML 1.0,
/// appendix F).
Units units_of(std::string_view bytes) {
  using namespace std::string_view_literals;
  if (bytes.starts_with("\xFF\xFE") || bytes.starts_with("<\0"sv)) return Units::utf16_low_first;
  if (bytes.starts_with("\xFE\xFF") || bytes.starts_with("\0<"sv)) return Units::utf16_high_first;
  return Units::bytes;
}

void append_utf8(std::string& text, char32_t point) {
  const auto add = [&text](char32_t byte) { text += static_cast<char>(byte); };
  if (point < 0x80) {
    add(point);
  } else if (point < 0x800) {
    add(0xC0U | (point >> 6U));
    add(0x80U | (point & 0x3FU));
  } else if (point < 0x10000) {
    add(0xE0U | (point >> 12U));
    add(0x80U | ((point >> 6U) & 0x3FU));
    add(0x80U | (point & 0x3FU));
  } else {
    add(0xF0U | (point >> 18U));
    add(0x80U | ((point >> 12U) & 0x3FU));
    add(0x80U | ((point >> 6U) & 0x3FU));
    add(0x80U | (point & 0x3FU));
  }
}

/// UTF-16 as UTF-8 (RFC 2781); a surrogate without its partner becomes U+FFFD.
std::string from_utf16(std::string_view bytes, bool low_first) {
  constexpr char32_t kReplacement = 0xFFFD;
  const auto unit_at = [&](std::size_t at) -> char32_t {
    const auto first = static_cast<unsigned char>(bytes[at]);
    const auto second = static_cast<unsigned char>(bytes[at + 1]);
    return low_first ? first | (char32_t{second} << 8U) : second | (char32_t{first} << 8U);
  };
  std::string text;
  text.reserve(bytes.size() / 2);
  for (std::size_t at = 0; at + 1 < bytes.size(); at += 2) {
    const char32_t unit = unit_at(at);
    const bool high = unit >= 0xD800 && unit < 0xDC00;
    const char32_t low = high && at + 3 < bytes.size() ? unit_at(at + 2) : 0;
    if (high && low >= 0xDC00 && low < 0xE000) {
      append_utf8(text, 0x10000 + ((unit - 0xD800) << 10U) + (low - 0xDC00));
      at += 2;
    } else if (unit != 0xFEFF || at > 0) {
      append_utf8(text, unit >= 0xD800 && unit < 0xE000 ? kReplacement : unit);
    }
  }
  if (bytes.size() % 2 != 0) append_utf8(text, kReplacement);
  return text;
}

std::string from_latin1(std::string_view bytes) {
  std::string text;
  text.reserve(bytes.size() + bytes.size() / 8);
  for (const char byte : bytes) append_utf8(text, static_cast<unsigned char>(byte));
  return text;
}

/// Where the value of `encoding` stands in the XML declaration; empty where it says none.
struct EncodingName {
  std::size_t begin = 0;
  std::string_view name;
};

EncodingName encoding_in(std::string_view text) {
  if (!text.starts_with("<?xml")) return {};
  const std::string_view declaration = text.substr(0, text.find("?>"));
  const std::size_t key = declaration.find("encoding");
  if (key == std::string_view::npos) return {};
  const std::size_t open = declaration.find_first_of("\"'", key);
  if (open == std::string_view::npos) return {};
  const std::size_t close = declaration.find(declaration[open], open + 1);
  if (close == std::string_view::npos) return {};
  return {open + 1, declaration.substr(open + 1, close - open - 1)};
}

std::string declared_as_utf8(std::string text) {
  const EncodingName encoding = encoding_in(text);
  if (!encoding.name.empty()) text.replace(encoding.begin, encoding.name.size(), "UTF-8");
  return text;
}

bool is_latin1(std::string_view name) {
  return name == "iso-8859-1" || name == "latin1" || name == "latin-1";
}

}  // namespace

std::optional<std::string> transcoded_xml(std::string_view bytes, Reporter& reporter) {
  const Units units = units_of(bytes);
  if (units != Units::bytes) {
    return declared_as_utf8(from_utf16(bytes, units == Units::utf16_low_first));
  }
  const std::size_t mark = bytes.starts_with(kUtf8Mark) ? kUtf8Mark.size() : 0;
  const EncodingName encoding = encoding_in(bytes.substr(mark));
  const std::string name = lower_case(encoding.name);
  if (name.empty() || name == "utf-8" || name == "utf8" || name == "us-ascii") return std::nullopt;
  if (is_latin1(name) && mark == 0) return declared_as_utf8(from_latin1(bytes));
  reporter.report(
      "encoding", span_at(mark + encoding.begin, encoding.name.size()),
      fmt::format("expected XML in UTF-8, UTF-16 or ISO-8859-1, found {}", quoted(encoding.name)),
      "have your notation program write it as UTF-8");
  return std::nullopt;
}

bool begins_as_xml(std::string_view bytes) noexcept {
  using namespace std::string_view_literals;
  if (units_of(bytes) != Units::bytes) {
    const std::string_view first = bytes.substr(0, 4);
    return first.find("<\0"sv) != std::string_view::npos ||
           first.find("\0<"sv) != std::string_view::npos;
  }
  if (bytes.starts_with(kUtf8Mark)) bytes.remove_prefix(kUtf8Mark.size());
  const std::size_t begin = bytes.find_first_not_of(" \t\r\n");
  return begin != std::string_view::npos && bytes[begin] == '<';
}

std::string line_of_text(std::string_view text) {
  constexpr std::size_t kMostCodePoints = 200;
  std::string line;
  bool blank = false;
  for (std::size_t count = 0; !text.empty() && count < kMostCodePoints; ++count) {
    const CodePoint point = first_code_point(text);
    const std::string_view bytes = text.substr(0, point.bytes);
    text.remove_prefix(point.bytes);
    if (point.value == U' ' || (point.value >= U'\t' && point.value <= U'\r')) {
      blank = !line.empty();
      continue;
    }
    if (blank) line += ' ';
    blank = false;
    line += printable(bytes);
  }
  return text.empty() ? line : line + "...";
}

}  // namespace fingerturn
