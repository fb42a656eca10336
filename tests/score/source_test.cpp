#include "fingerturn/source.hpp"

#include "catch.hpp"

#include <string>
#include <string_view>
#include <vector>

using namespace fingerturn;

namespace {

std::vector<std::string> lines_of(const Source& source) {
  std::vector<std::string> lines;
  for (std::size_t number = 1; number <= source.line_count(); ++number) {
    lines.emplace_back(source.line_text(number));
  }
  return lines;
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("a line ends at a line feed, a carriage return, or both") {
  struct Case {
    const char* text;
    Lines lines;
  };
  const Case c =
      GENERATE(Case{"", {""}}, Case{"a", {"a"}}, Case{"a\n", {"a", ""}}, Case{"a\nb", {"a", "b"}},
               Case{"a\r\nb\r\n", {"a", "b", ""}}, Case{"a\rb\r", {"a", "b", ""}},
               Case{"a\n\nb", {"a", "", "b"}}, Case{"a\r\r\nb", {"a", "", "b"}},
               Case{"a\n\rb", {"a", "", "b"}}, Case{"\r\n\n\r", {"", "", "", ""}});
  CHECK(lines_of(Source("test", c.text)) == c.lines);
}

TEST_CASE("lines start where the ones before them end") {
  const Source source("test", "ab\r\ncd\re\n");
  CHECK(source.line_count() == 4);
  CHECK(source.line_start(1) == 0);
  CHECK(source.line_start(2) == 4);
  CHECK(source.line_start(3) == 7);
  CHECK(source.line_start(4) == 9);
}

TEST_CASE("a line that is not there is empty and starts at the end") {
  const Source source("test", "ab\ncd");
  for (const std::size_t number : {std::size_t{0}, std::size_t{3}, std::size_t{1000}}) {
    CAPTURE(number);
    CHECK(source.line_text(number).empty());
    CHECK(source.line_start(number) == 5);
  }
}

TEST_CASE("places count lines and code points from one") {
  struct Case {
    std::size_t offset;
    Place place;
  };
  // a with umlaut: two bytes; the sign for double flat: four.
  const Source source("test", "\xC3\xA4 b\n\U0001D12Bx\r\ny");
  const Case c = GENERATE(Case{0, {1, 1}}, Case{2, {1, 2}}, Case{3, {1, 3}}, Case{4, {1, 4}},
                          Case{5, {2, 1}}, Case{9, {2, 2}}, Case{10, {2, 3}}, Case{12, {3, 1}},
                          Case{13, {3, 2}}, Case{14, {3, 2}}, Case{99999, {3, 2}});
  CAPTURE(c.offset);
  CHECK(source.place_of(c.offset) == c.place);
}

TEST_CASE("a byte that is no UTF-8 is a column of its own") {
  const Source source("test",
                      "\xFF\xFE"
                      "a");
  CHECK(source.place_of(2) == Place{1, 3});
}

TEST_CASE("every offset lies in the line that its place names") {
  const Source source("test", "one\r\ntwo\rthree\n\nfour");
  for (std::size_t offset = 0; offset <= source.text().size(); ++offset) {
    CAPTURE(offset);
    const Place place = source.place_of(offset);
    CHECK(source.line_start(place.line) + place.column - 1 == offset);
  }
}

TEST_CASE("the text of a span is cut off at the end") {
  const Source source("test", "hand: left");
  CHECK(source.text_of({0, 4}) == "hand");
  CHECK(source.text_of({6, 99}) == "left");
  CHECK(source.text_of({50, 99}).empty());
  CHECK(source.text_of({4, 2}).empty());
}

TEST_CASE("a source owns its text, NUL bytes and all") {
  const std::string text("a\0b", 3);
  const Source source("name", text);
  CHECK(source.name() == "name");
  CHECK(source.text() == std::string_view(text));
  CHECK(source.line_text(1).size() == 3);
}
