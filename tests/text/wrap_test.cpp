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

}  // namespace fingerturn
