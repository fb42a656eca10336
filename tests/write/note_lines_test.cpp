#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"
#include "read/score_written.hpp"

#include <string>

/// What somebody notes at a bar stands in every report.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

constexpr const char* kNoted =
    "passage: a\nC4:1 D:2 |\nnote: thumb < 2 & loose\nE:3 F:4 |\nnote: the last\nG:5";

std::size_t count_in(const std::string& text, const std::string& words) {
  std::size_t count = 0;
  for (std::size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) {
    ++count;
  }
  return count;
}

}  // namespace

TEST_CASE("a note stands with its bar in every report") {
  const AnalysedScore noted("test.passage", score_written(kNoted));
  CHECK(count_in(write_text(noted, {}), "\nbar 2: thumb < 2 & loose\nbar 3: the last\n") == 1);
  CHECK(count_in(write_html(noted), "<p>bar 2: thumb &lt; 2 &amp; loose</p>\n") == 1);
  CHECK(count_in(write_svg(noted), "bar 2: thumb &lt; 2 &amp; loose") >= 1);
  CHECK(count_in(write_markdown(noted, {}), "bar 3: the last\n") == 1);
  CHECK(count_in(write_json(noted),
                 R"("notes":[{"bar":2,"text":"thumb < 2 & loose"},{"bar":3,"text":"the last"}])") ==
        1);
}

TEST_CASE("a report of some bars has the notes of these") {
  const AnalysedScore some =
      only_bars(AnalysedScore("test.passage", score_written(kNoted)), {3, 3});
  CHECK(count_in(write_text(some, {}), "thumb < 2") == 0);
  CHECK(count_in(write_text(some, {}), "bar 3: the last") == 1);
  CHECK(count_in(write_json(some), "thumb < 2") == 0);
  CHECK(count_in(write_json(some), "the last") == 1);
}

TEST_CASE("a report of a passage without notes has no word of them") {
  const AnalysedScore plain("test.passage", score_written("C4:1 D:2"));
  CHECK(count_in(write_json(plain), "\"text\":") == 0);
}
