#include "read/musicxml/text.hpp"

#include "text/encoding.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr std::string_view kUtf8Mark = "\xEF\xBB\xBF";

/// Told by the byte order mark or, without one, by the zero byte beside the first "<" (XML 1.0,
/// appendix F).
std::optional<Encoding> utf16_of(std::string_view bytes) {
  using namespace std::string_view_literals;
  if (bytes.starts_with("\xFF\xFE") || bytes.starts_with("<\0"sv)) return kUtf16LowFirst;
  if (bytes.starts_with("\xFE\xFF") || bytes.starts_with("\0<"sv)) return kUtf16HighFirst;
  return std::nullopt;
}

bool has_utf16_mark(std::string_view bytes) {
  return bytes.starts_with("\xFF\xFE") || bytes.starts_with("\xFE\xFF");
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

/// Marks that only say in which direction what stands beside them runs; a report sets that itself.
bool is_mark_of_direction(char32_t value) {
  return value == 0x061C || value == 0x200E || value == 0x200F;
}

bool is_read_as_it_is(std::string_view encoding) {
  return encoding.empty() || encoding == "utf-8" || encoding == "utf8" || encoding == "us-ascii";
}

}  // namespace

std::optional<std::string> transcoded_xml(std::string_view bytes, Reporter& reporter) {
  std::optional<Encoding> encoding = utf16_of(bytes);
  std::size_t begin = has_utf16_mark(bytes) ? kUtf16LowFirst.unit : 0;
  EncodingName declared{0, "UTF-16"};
  if (!encoding) {
    begin = bytes.starts_with(kUtf8Mark) ? kUtf8Mark.size() : 0;
    declared = encoding_in(bytes.substr(begin));
    const std::string name = lower_case(declared.name);
    if (is_read_as_it_is(name)) return std::nullopt;
    if (begin == 0) encoding = encoding_called(name);
  }
  std::optional<std::string> text;
  if (encoding) text = to_utf8(std::string(bytes.substr(begin)), *encoding);
  if (text) return declared_as_utf8(std::move(*text));
  reporter.report("encoding", span_at(begin + declared.begin, declared.name.size()),
                  fmt::format("expected XML in UTF-8, UTF-16, ISO-8859-1, ISO-8859-15 or "
                              "windows-1252, found {}",
                              quoted(declared.name)),
                  "have your notation program write it as UTF-8");
  return std::nullopt;
}

bool begins_as_xml(std::string_view bytes) noexcept {
  using namespace std::string_view_literals;
  if (utf16_of(bytes)) {
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
    if (is_mark_of_direction(point.value)) continue;
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
