#include "catch.hpp"
#include "write/page/pages.hpp"

#include <algorithm>
#include <string>

/// The swing as a drawing in text.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

/// The three rows of the drawing.
std::string drawing_of(const std::string& notation, const TextStyle& style) {
  const std::string text = write_text(analysed(notation), style);
  const std::size_t begin = text.find("to right");
  REQUIRE(begin != std::string::npos);
  const std::size_t last = text.find("to left", begin);
  return text.substr(begin, text.find('\n', last) + 1 - begin);
}

constexpr TextStyle kAscii{.ascii = true, .trace = true};

}  // namespace

TEST_CASE("the drawing shows each swing: slanted strokes play, upright ones prepare") {
  CHECK(drawing_of("C4:1 D:2 E:3 F:1", kAscii) ==
        "to right   o        2      3\n"
        "swing     : \\      /    : /      \\\n"
        "to left      1           o        1\n");
  CHECK(drawing_of("C4:1 D:2 E:3", {.trace = true}) ==
        "to right   \u25CB        2      3\n"
        "swing     \u250A \u2572      \u2571    \u250A \u2571\n"
        "to left      1           \u25CB\n");
}

TEST_CASE("the drawing goes the other way in the left hand") {
  CHECK(drawing_of("hand: left\nC4:1 B3:2", kAscii) ==
        "to right     1\n"
        "swing     : /      \\\n"
        "to left    o        2\n");
}

TEST_CASE("level events reach over both sides, and what is not known has no stroke") {
  CHECK(drawing_of("C4:1+E4:3+G4:5", kAscii) ==
        "to right     =\n"
        "swing        =\n"
        "to left      =\n");
  CHECK(drawing_of("C4:2 D E:5", kAscii) ==
        "to right                   5\n"
        "swing       ?2     ??     ?\n"
        "to left\n");
}

TEST_CASE("the drawing keeps to the width and stays in ASCII where that is asked for") {
  const std::string notes = "1/8 C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C:5 | B4:4 A:3 G:2 F:1 E:3 D:2 C:1 r";
  const std::string text =
      write_text(analysed(notes), {.columns = 40, .ascii = true, .trace = true});
  CHECK(std::all_of(text.begin(), text.end(), [](char letter) { return letter > 0; }));
  std::size_t begin = 0;
  for (std::size_t end = text.find('\n'); end != std::string::npos; end = text.find('\n', begin)) {
    CHECK(end - begin <= 40);
    begin = end + 1;
  }
}

TEST_CASE("the drawing stands for the rows of directions, also in the legend") {
  const std::string text = write_text(analysed("C4:1 D:2 E:3"), {.trace = true});
  for (const char* row : {"\nprepare", "\nplay", "\nforearm"}) {
    CAPTURE(row);
    CHECK(text.find(row) == std::string::npos);
  }
  CHECK(text.find("up is to the right") != std::string::npos);
}
