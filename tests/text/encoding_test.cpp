#include "text/encoding.hpp"

#include "catch.hpp"

#include <array>
#include <string>
#include <thread>
#include <vector>

using namespace fingerturn;
using namespace std::string_literals;

namespace {

std::string from(std::string_view name, std::string bytes) {
  const std::optional<Encoding> encoding = encoding_called(name);
  REQUIRE(encoding.has_value());
  return to_utf8(std::move(bytes), *encoding).value_or("not converted");
}

std::string from_low_first(std::string bytes) {
  return to_utf8(std::move(bytes), kUtf16LowFirst).value_or("not converted");
}

}  // namespace

TEST_CASE("encodings in single bytes become UTF-8") {
  CHECK(from("iso-8859-1", "La Cit\xE9 \xA4 \x80") == "La Cit\u00E9 \u00A4 \u0080");
  CHECK(from("iso-8859-15", "La Cit\xE9 \xA4") == "La Cit\u00E9 \u20AC");
  CHECK(from("windows-1252", "La Cit\xE9 \xA4 \x80") == "La Cit\u00E9 \u00A4 \u20AC");
  CHECK(from("windows-1252",
             "\x93"
             "a\x94 \x96 b") == "\u201Ca\u201D \u2013 b");
  CHECK(from("latin1", "\xFC") == from("latin-1", "\xFC"));
  CHECK(from("cp1252", "\x85") == "\u2026");
  CHECK(from("windows-1252", "").empty());
  CHECK(from("windows-1252", "a\0b"s) == "a\0b"s);
}

TEST_CASE("only encodings that are meant have names") {
  CHECK_FALSE(encoding_called("shift_jis").has_value());
  CHECK_FALSE(encoding_called("ISO-8859-1").has_value());  // names come in lower case
  CHECK_FALSE(encoding_called("").has_value());
  CHECK_FALSE(encoding_called("iso-8859-1//ignore").has_value());
}

// RFC 2781, section 2.1.
TEST_CASE("UTF-16 becomes UTF-8, in either order of its bytes") {
  CHECK(from_low_first("\xE9\0\x34\xD8\x1E\xDD"s) == "\u00E9\U0001D11E");
  CHECK(to_utf8("\0\xE9\xD8\x34\xDD\x1E"s, kUtf16HighFirst) == "\u00E9\U0001D11E");
}

TEST_CASE("what is no text becomes U+FFFD, and what follows it is still read") {
  CHECK(from("windows-1252",
             "\x81"
             "a\x8D\x9D"
             "b") == "\uFFFDa\uFFFD\uFFFDb");
  CHECK(from_low_first("\x34\xD8"
                       "a\0"s) == "\uFFFDa");  // half of a pair,
  CHECK(from_low_first("\x1E\xDD"
                       "a\0"s) == "\uFFFDa");                    // the other half,
  CHECK(from_low_first("a\0\x34\xD8"s) == "a\uFFFD");            // one at the end,
  CHECK(from_low_first("a\0\x34\xD8\x1E"s) == "a\uFFFD\uFFFD");  // one that is cut off,
  CHECK(from_low_first("a\0b"s) == "a\uFFFD");                   // and half a letter
}

TEST_CASE("a system that cannot convert says so") {
  CHECK_FALSE(to_utf8("a", Encoding{"no such encoding"}).has_value());
}

TEST_CASE("a long text is converted whole, however much of it is no text") {
  constexpr std::size_t kMany = 1000000;
  std::string text = from("windows-1252", std::string(kMany, '\x80'));
  CHECK(text.size() == 3 * kMany);
  CHECK(text.ends_with("\u20AC"));
  text = from("windows-1252", std::string(kMany, '\x81'));
  CHECK(text.size() == 3 * kMany);
  CHECK(text.starts_with("\uFFFD\uFFFD"));
}

TEST_CASE("threads convert at the same time") {
  constexpr std::size_t kThreads = 4;
  std::array<std::size_t, kThreads> sizes{};
  {
    std::vector<std::jthread> threads;
    threads.reserve(kThreads);
    for (std::size_t& size : sizes) {
      threads.emplace_back([&size] {
        for (int i = 0; i < 200; ++i) size += to_utf8("\x93\x94", Encoding{"CP1252"})->size();
      });
    }
  }
  for (const std::size_t size : sizes) CHECK(size == 1200);
}
