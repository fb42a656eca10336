#include "catch.hpp"
#include "fingerturn/read.hpp"
#include "fingerturn/report.hpp"
#include "read/case_file.hpp"
#include "score/file_reading.hpp"
#include "score/score_text.hpp"
#include "write/random_score.hpp"

#include <cstdint>
#include <string>

/// What write_passage writes reads back as an equal score, and that writes the same bytes.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

constexpr std::uint64_t kSeeds = 500;

void check_round_trip(const Score& score) {
  const std::string written = write_passage(score);
  const Source source("written.passage", written);
  const ReadResult again = read_notation(source);
  CAPTURE(written, render(source, again.diagnostics));
  REQUIRE(again.diagnostics.errors == 0);
  REQUIRE(score_text(again.score) == score_text(score));
  REQUIRE(again.score == score);
  REQUIRE(write_passage(again.score) == written);
}

ReadResult read_text(const std::string& text) {
  return read_notation(Source("read.passage", text));
}

}  // namespace

TEST_CASE("scores made by chance are written and read back") {
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    CAPTURE(seed);
    check_round_trip(random_score(seed));
  }
}

TEST_CASE("some bars of scores made by chance are written and read back") {
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    CAPTURE(seed);
    const auto first = static_cast<std::int32_t>(seed % 7);
    check_round_trip(only_bars(random_score(seed), {first, first + static_cast<int>(seed % 5)}));
  }
}

TEST_CASE("one hand of scores made by chance is written and read back") {
  for (std::uint64_t seed = 1; seed <= kSeeds / 5; ++seed) {
    CAPTURE(seed);
    const Hand hand = seed % 2 == 0 ? Hand::right : Hand::left;
    // The changes of meter that fall into the other hand's bars have no place any more.
    Score score = only_bars(only_hand(random_score(seed), hand), {0, 999999});
    check_round_trip(score);
  }
}

TEST_CASE("chance reaches every form of the notation") {
  std::string all;
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) all += write_passage(random_score(seed));
  for (const std::string form :
       {"passage: ", "composer: ", "source: ", "hand: left", "meter: ", "tempo: ",
        "bar: ",     "reach: ",    "RH: ",     "LH: ",       "^",       "~",
        ">",         "?",          "+",        " r",         " ,",      "|:",
        ":|",        ":|:",        "||",       "1/8t",       "1/4.",    "1/4..",
        "5/7",       "##",         "bb",       "passage:#",  "key: ",   "key: none",
        " major",    " minor",     " sharps",  " flats",     "note: ",  "Fn"}) {
    CAPTURE(form);
    CHECK(all.find(form) != std::string::npos);
  }
}

TEST_CASE("everything that the reading cases read is written and read back") {
  namespace files = std::filesystem;
  std::size_t checked = 0;
  for (const auto& path :
       files_below(files::path(FINGERTURN_TESTS_DIR) / "cases/notation", ".cases")) {
    for (const ReadingCase& reading : cases_in(text_of_file(path))) {
      const ReadResult read = read_text(reading.text);
      if (!read.ok()) continue;
      INFO(path.filename().string() << ": " << reading.title);
      check_round_trip(read.score);
      ++checked;
    }
  }
  CHECK(checked > 50);
}

TEST_CASE("corners of the notation are written and read back") {
  const std::string text = GENERATE(
      "1/8 ^C4:1 D4:2", "1/8 ^C4:1", "1/8 ^C4:1 | ^D4:2 1/4 E4:3", "C4:1 1/8 ^D4:2 E4:3",
      "passage: a\tb\nC4:1", "passage: a \u00A0\nC4:1", "passage: a\uFFFDb\nC4:1",
      "composer: x\nC4:1", "bar: 999999\nC4:1 | D4:2 | E4:3", "tempo: 1.0000000000000002\nC4:1",
      "tempo: 1999.999\nC4:1", "RH: C4:1\nLH: C3:1\nbar: 9\nRH: D4:1 | E4:1\nLH: | D3:1",
      "RH: r\nLH: r", "passage: a\npassage: b\npassage:\npassage:", "|: :| C4:1 :| |:", "||: C4:1",
      "|| C4:1", "bar: 0\nC4:1 | D:2", "hand: left\n|: C4:1 :|");
  CAPTURE(text);
  const ReadResult read = read_text(text);
  REQUIRE(read.ok());
  check_round_trip(read.score);
}

TEST_CASE("what could not be written so that it reads back is refused when it is read") {
  const std::string text =
      GENERATE("999999/1. C4:1", "1/999999.. C4:1", "999999/999998t C4:1",
               "999999999999999999/999999999999999998.. C4:1", "1/999999999999999999t C4:1",
               "1/576460752303423488. C4:1", "bar: 999999999\nC4:1 | D4:2",
               "passage: a\u2028b\nC4:1", "composer: \u202Ea\nC4:1", "tempo: 999999/7. = 60\nC4:1");
  CAPTURE(text);
  const ReadResult read = read_text(text);
  if (read.ok()) {
    check_round_trip(read.score);
  } else {
    CHECK(read.diagnostics.errors == 1);
  }
}

TEST_CASE("bars that no bar line divides are written with one") {
  Score score = read_text("RH: C5:1 | D:2 | E:3\nLH: C3:5 | D:4").score;
  const Score divided = score;
  for (Line& line : score.passages[0].lines) line.bar_lines.clear();
  const ReadResult again = read_text(write_passage(score));
  CHECK(again.diagnostics.errors == 0);
  CHECK(score_text(again.score) == score_text(divided));
}

TEST_CASE("what a title holds cannot change the rest of what is written") {
  const std::string title =
      GENERATE(as<std::string>{}, "a\nC4:9", "a\rb", " # b", "a # b", "# a", " a", "a ", "\x1B[31m",
               std::string("\0", 1), "\xFF", "passage: b", "\u202E");
  Score score;
  score.passages.emplace_back();
  score.passages[0].title = title;
  score.passages[0].composer = title;
  score.passages[0].source = title;
  const std::string written = write_passage(score);
  CAPTURE(written);
  const ReadResult again = read_text(written);
  CHECK(again.diagnostics.errors == 0);
  REQUIRE(again.score.passages.size() == 1);
  CHECK(again.score.passages[0].lines.empty());
  CHECK_FALSE(again.score.passages[0].title.empty());
  check_round_trip(again.score);
}

TEST_CASE("a title of nothing but signs of comments is written in time in proportion to it") {
  // Were all that follows moved for each, this would take hours.
  constexpr std::size_t kMany = 8000000;
  Score score;
  score.passages.emplace_back();
  for (std::size_t i = 0; i < kMany; ++i) score.passages[0].title += " #";
  CHECK(write_passage(score).size() == std::string("passage: \n").size() + 3 * kMany);
}

TEST_CASE("a passage is written with its key, and with the signs that the key does not say") {
  const auto [text, written] = GENERATE(table<std::string, std::string>({
      {"key: d major\nD4:1 F:3 Fn F# C5 Cn Cb", "key: D major\nD4:1 F4:3 Fn4 F#4 C5 Cn5 Cb5\n"},
      {"key: 2 flats\nB3 Bn B# | B", "key: 2 flats\nB3 Bn3 B#3 | B3\n"},
      {"C#4:2 Cn C5 | C4", "C#4:2 Cn4 C5 | C4\n"},
      {"F4 |\nkey: 1 sharp\nF | F |\nkey: none\nF",
       "F4 |\nkey: 1 sharp\nF4 | F4 |\nkey: none\nF4\n"},
      {"RH: F4 | F |\nkey: G major\nRH: F\nLH: F3 | F | F",
       "RH: F4 | F4 |\nLH: F3 | F3 |\nkey: G major\nRH: F4\nLH: F3\n"},
  }));
  const ReadResult read = read_text(text);
  CHECK(write_passage(read.score) == written);
  CHECK(read_text(written).diagnostics.warnings == 0);
  check_round_trip(read.score);
}

TEST_CASE("what is written is not asked about when it is read again") {
  for (std::uint64_t seed = 1; seed <= kSeeds / 5; ++seed) {
    const ReadResult again = read_text(write_passage(random_score(seed)));
    for (const Diagnostic& diagnostic : again.diagnostics.kept) CHECK(diagnostic.code != "sign");
  }
}

TEST_CASE("comments and notes stand again before their bars") {
  const auto [text, written] = GENERATE(table<std::string, std::string>({
      {"# above all\n#\n  #without a blank\npassage: a\nkey: 1 flat # behind\n# above the notes\n"
       "C4 | D |\n# before the third\nnote: loose\nE | F\n# at the end\n#",
       "passage: a\nkey: 1 flat\n# above all\n#\n# without a blank\n# behind\n# above the "
       "notes\nC4 | D4 |\n"
       "# before the third\nnote: loose\nE4 | F4\n# at the end\n#\n"},
      {"passage: a\nC4\n# of the next\npassage: b\nD4",
       "passage: a\nC4\n\npassage: b\n# of the next\nD4\n"},
      {"passage: a\nC4\n# of this one\n\npassage: b\nD4",
       "passage: a\nC4\n# of this one\n\npassage: b\nD4\n"},
      {"passage: a # title\nC4 D # first\nE | F # second\n# alone\nG | # third\n\n# last",
       "passage: a\n# title\n# first\nC4 D4 E4 |\n# second\nF4 G4 |\n# alone\n# third\n# last\n"},
      {"# c\npassage: a\npassage: b", "passage: a\n# c\n\npassage: b\n"},
      {"passage: a\nnote: alone\n# and this", "passage: a\n# and this\nnote: alone\n"},
      {"RH: C4 |\n# here\nRH: D |\nLH: C3 | D |",
       "RH: C4 |\nLH: C3 |\n# here\nRH: D4 |\nLH: D3 |\n"},
      {"# a\x1B[31m\xFF\nC4", "# a\uFFFD[31m\uFFFD\nC4\n"},
  }));
  CAPTURE(text);
  const ReadResult read = read_text(text);
  CHECK(write_passage(read.score) == written);
  CHECK(write_passage(read_text(written).score) == written);
}

TEST_CASE("some bars keep their comments, notes and key") {
  const Score score =
      read_text("# one\nkey: G major\nF4 |\n# two\nnote: here\nF |\n# three\nF").score;
  CHECK(write_passage(only_bars(score, {2, 2})) ==
        "bar: 2\nkey: G major\n# two\nnote: here\nF4 |\n");
}
