#include "text/wrap.hpp"

#include "catch.hpp"

#include <string>

namespace fingerturn {

TEST_CASE("text is wrapped between words, and what follows is indented") {
  CHECK(wrapped("note  ", "one two three four", 16) == "note  one two\n      three four\n");
}

TEST_CASE("a word that is longer than a line is cut, but not into bits") {
  CHECK(wrapped("A  ", "scores/an-etude-with-a-long-name.musicxml", 24) ==
        "A  scores/an-etude-with-\n   a-long-name.musicxml\n");
  CHECK(wrapped("", std::string(20, 'x'), 4) == std::string(16, 'x') + "\nxxxx\n");
  // Not within a letter: each of these takes two bytes.
  CHECK(wrapped("", "üüüüüüüüüüüüüüüüüüü", 16) == "üüüüüüüüüüüüüüüü\nüüü\n");
}

TEST_CASE("lines are as wide as a terminal shows them") {
  // Eight letters of two cells each.
  CHECK(wrapped("", "月光月光 月光月光", 16) == "月光月光\n月光月光\n");
  CHECK(wrapped("", "月光月光月光月光月光", 17) == "月光月光月光月光\n月光\n");
  CHECK(wrapped("月 ", "one two three", 10) == "月 one two\n   three\n");
  CHECK(padded("月光", 6) + "|" == "月光  |");
  CHECK(padded("e\u0301", 3) + "|" == "e\u0301  |");
}

TEST_CASE("a word as long as the longest file is cut in time in proportion to it") {
  // Were its end looked for anew in every line, this would take an hour.
  constexpr std::size_t kLine = 16;
  constexpr std::size_t kLines = 4000000;
  const std::string text = wrapped("", std::string(kLine * kLines, 'x'), 1);
  CHECK(text.size() == (kLine + 1) * kLines);
  CHECK(text.substr(0, kLine + 1) == std::string(kLine, 'x') + '\n');
}

}  // namespace fingerturn
