#include "text/utf8.hpp"

#include "catch.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>

using namespace fingerturn;
using namespace std::string_view_literals;

namespace {

/// Encodes as RFC 3629, section 3, lays the bits out.
std::string encoded(char32_t value) {
  const auto byte = [](char32_t bits) {
    return static_cast<char>(static_cast<unsigned char>(bits));
  };
  if (value < 0x80) return {byte(value)};
  if (value < 0x800) return {byte(0xC0 | (value >> 6)), byte(0x80 | (value & 0x3F))};
  if (value < 0x10000) {
    return {byte(0xE0 | (value >> 12)), byte(0x80 | ((value >> 6) & 0x3F)),
            byte(0x80 | (value & 0x3F))};
  }
  return {byte(0xF0 | (value >> 18)), byte(0x80 | ((value >> 12) & 0x3F)),
          byte(0x80 | ((value >> 6) & 0x3F)), byte(0x80 | (value & 0x3F))};
}

bool is_surrogate(char32_t value) { return value >= 0xD800 && value <= 0xDFFF; }

}  // namespace

TEST_CASE("every code point of Unicode is decoded, the surrogates are not") {
  std::size_t wrong = 0;
  for (char32_t value = 0; value <= 0x10FFFF; ++value) {
    const std::string bytes = encoded(value) + "x";
    const CodePoint point = first_code_point(bytes);
    const bool right = is_surrogate(value)
                           ? !point.valid && point.bytes == 1
                           : point.valid && point.value == value && point.bytes + 1 == bytes.size();
    if (!right) ++wrong;
  }
  CHECK(wrong == 0);
}

// RFC 3629, sections 3 and 10.
TEST_CASE("what RFC 3629 forbids is one byte that is no UTF-8") {
  const std::string_view bytes =
      GENERATE("\x80"sv, "\xBF"sv,                                              // no lead byte
               "\xC0\x80"sv, "\xC1\xBF"sv, "\xE0\x80\x80"sv, "\xE0\x9F\xBF"sv,  // overlong
               "\xF0\x80\x80\x80"sv, "\xF0\x8F\xBF\xBF"sv,                      // overlong
               "\xED\xA0\x80"sv, "\xED\xBF\xBF"sv,                              // surrogates
               "\xF4\x90\x80\x80"sv, "\xF5\x80\x80\x80"sv, "\xF8\x88\x80\x80\x80"sv, "\xFE"sv,
               "\xFF"sv, "\xC3"sv, "\xE2\x99"sv, "\xF0\x9D\x84"sv,  // truncated
               "\xC3\x28"sv, "\xE2\x28\xA1"sv, "\xF0\x9D\x84x"sv,   // cut off by another character
               "\xE2\x99\xC3\xA4"sv);
  const CodePoint point = first_code_point(bytes);
  CHECK_FALSE(point.valid);
  CHECK(point.bytes == 1);
}

TEST_CASE("code points are counted, bad bytes one by one") {
  CHECK(count_code_points("") == 0);
  CHECK(count_code_points("abc") == 3);
  CHECK(count_code_points("\xC3\xA4\xE2\x99\xAF\xF0\x9D\x84\xAA") == 3);
  CHECK(count_code_points("\xE2\x99") == 2);
  CHECK(count_code_points("a\0b"sv) == 3);
}

TEST_CASE("the first byte that no text should hold is found") {
  CHECK_FALSE(find_bad_byte("").has_value());
  CHECK_FALSE(find_bad_byte("tabs\tand \xC3\xA4").has_value());

  const auto no_utf8 = find_bad_byte("\xC3\xA4\xFFz");
  REQUIRE(no_utf8.has_value());
  CHECK(no_utf8->offset == 2);
  CHECK(no_utf8->bytes == 1);
  CHECK_FALSE(no_utf8->control);

  const auto escape = find_bad_byte("ab\x1B[31m");
  REQUIRE(escape.has_value());
  CHECK(escape->offset == 2);
  CHECK(escape->control);

  const auto next_line = find_bad_byte("a\xC2\x85");  // U+0085, a control character of two bytes
  REQUIRE(next_line.has_value());
  CHECK(next_line->bytes == 2);
  CHECK(next_line->control);

  REQUIRE(find_bad_byte("\0"sv).has_value());
  CHECK(find_bad_byte("\x7F")->control);
}

TEST_CASE("what a terminal might act on is replaced") {
  CHECK(printable("plain \xC3\xA4\ttext") == "plain \xC3\xA4\ttext");
  CHECK(printable("\x1B[31m") == "\uFFFD[31m");
  CHECK(printable("a\nb\rc\0d"sv) == "a\uFFFDb\uFFFDc\uFFFDd");
  CHECK(printable("\x7F\xC2\x9B") == "\uFFFD\uFFFD");
  CHECK(printable("\xFF\xE2\x99") == "\uFFFD\uFFFD\uFFFD");
  // Marks that reverse the text after them, and the separators of lines and paragraphs.
  CHECK(printable("\u202E\u2066\u2028\u2029") == "\uFFFD\uFFFD\uFFFD\uFFFD");
}

TEST_CASE("what acts instead of being shown is none of the letters (Unicode, Cc, Bidi_Control)") {
  struct Range {
    char32_t first;
    char32_t last;
    const char* name;
  };
  constexpr std::array<Range, 10> kActing{{{0x00, 0x1F, "C0, but for the tab"},
                                           {0x7F, 0x9F, "DEL and C1"},
                                           {0x061C, 0x061C, "ALM"},
                                           {0x200E, 0x200F, "LRM, RLM"},
                                           {0x2028, 0x2029, "LS, PS"},
                                           {0x202A, 0x202E, "LRE, RLE, PDF, LRO, RLO"},
                                           {0x2066, 0x2069, "LRI, RLI, FSI, PDI"},
                                           {0x206A, 0x206F, "deprecated format characters"},
                                           {0xFFF9, 0xFFFB, "interlinear annotation"},
                                           {0xE0000, 0xE007F, "tags"}}};
  std::size_t wrong = 0;
  for (char32_t value = 0; value <= 0x10FFFF; ++value) {
    if (is_surrogate(value)) continue;
    const bool acts =
        value != U'\t' && std::any_of(kActing.begin(), kActing.end(), [value](const Range& range) {
          return value >= range.first && value <= range.last;
        });
    const std::string shown = printable(encoded(value));
    if (acts_on_text(value) != acts || shown != (acts ? kReplacement : encoded(value))) ++wrong;
  }
  CHECK(wrong == 0);
}

TEST_CASE("letters of all scripts are shown, and what joins them or keeps them apart") {
  const std::string text =
      GENERATE(as<std::string>{}, "\u0645\u06CC\u200C\u062E\u0648\u0627\u0647\u0645",  // Persian
               "\u0915\u094D\u200D\u0937",                                             // Hindi
               "\u05E9\u05C1\u05D9\u05E8", "\u6708\u5149", "e\u0301", "\U0001F3B9\uFE0F",
               "a\u00A0b\u200Bc", "\U0001D12A");
  CHECK(printable(text) == text);
}

TEST_CASE("no two bytes get past that make a terminal act") {
  const auto harmless = [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return c == '\t' || (byte >= 0x20 && byte != 0x7F);
  };
  std::size_t wrong = 0;
  for (int first = 0; first < 256; ++first) {
    for (int second = 0; second < 256; ++second) {
      const std::string bytes{static_cast<char>(first), static_cast<char>(second)};
      const std::string text = printable(bytes);
      const bool right = std::all_of(text.begin(), text.end(), harmless) &&
                         !find_bad_byte(text).has_value() && printable(text) == text;
      if (!right) ++wrong;
    }
  }
  CHECK(wrong == 0);
}
