#include "text/words.hpp"

#include "catch.hpp"

#include <array>
#include <string>
#include <string_view>
#include <vector>

using namespace fingerturn;

namespace {

constexpr std::array<std::string_view, 5> kWords{"passage", "composer", "meter", "tempo", "hand"};

}  // namespace

TEST_CASE("a mistyped word finds the word that was meant") {
  struct Case {
    const char* word;
    const char* nearest;
  };
  const Case c =
      GENERATE(Case{"passage", "passage"}, Case{"pasage", "passage"}, Case{"passsage", "passage"},
               Case{"passoge", "passage"}, Case{"tmepo", "tempo"}, Case{"metre", "meter"},
               Case{"hnd", "hand"}, Case{"composr", "composer"}, Case{"composersx", "composer"});
  CAPTURE(c.word);
  CHECK(nearest_word(c.word, kWords) == c.nearest);
}

TEST_CASE("words are known in capitals too") {
  CHECK(is_in_lower_case("Tempo", "tempo"));
  CHECK(is_in_lower_case("", ""));
  CHECK_FALSE(is_in_lower_case("Tempos", "tempo"));
  CHECK_FALSE(is_in_lower_case("temp", "tempo"));
  CHECK_FALSE(is_in_lower_case("temp@", "temp`"));
  CHECK(ends_in_lower_case("a.MXL", ".mxl"));
  CHECK(ends_in_lower_case(".mxl", ".mxl"));
  CHECK_FALSE(ends_in_lower_case("mxl", ".mxl"));
  CHECK_FALSE(ends_in_lower_case("a.mxl ", ".mxl"));
}

TEST_CASE("words become a sentence") {
  CHECK(sentence_of("bar 4 is short") == "Bar 4 is short.");
  CHECK(sentence_of("a") == "A.");
  CHECK(sentence_of("z") == "Z.");
  CHECK(sentence_of("4 bars") == "4 bars.");
  CHECK(sentence_of("{") == "{.");
  CHECK(sentence_of("") == ".");
}

TEST_CASE("words are listed") {
  using Words = std::vector<std::string>;
  CHECK(enumerated(Words{}) == "");
  CHECK(enumerated(Words{"A"}) == "A");
  CHECK(enumerated(Words{"A", "B"}) == "A and B");
  CHECK(enumerated(Words{"A", "B", "4 more"}) == "A, B and 4 more");
}

TEST_CASE("a word that is close to none finds none") {
  const std::string word =
      GENERATE("", "x", "ha", "allegro", "tp", "comp", "passagework", "handxxx");
  CAPTURE(word);
  CHECK(nearest_word(word, kWords).empty());
}

TEST_CASE("fewer changes win, and of equals the first") {
  constexpr std::array<std::string_view, 3> kAlike{"table", "cable", "cables"};
  CHECK(nearest_word("cabl", kAlike) == "cable");
  CHECK(nearest_word("fable", kAlike) == "table");
}

TEST_CASE("there is nothing to find among no words, or for a word of a megabyte") {
  CHECK(nearest_word("tempo", {}).empty());
  CHECK(nearest_word(std::string(1 << 20, 'a'), kWords).empty());
}
