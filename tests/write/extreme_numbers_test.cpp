#include "catch.hpp"
#include "fingerturn/excerpt.hpp"
#include "fingerturn/read.hpp"
#include "fingerturn/report.hpp"
#include "score/score_text.hpp"
#include "score/timeline.hpp"
#include "write/random_score.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>

/// The highest bars and the finest values that any reader gives are written so that they read back.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

void check_read_back(const std::string& written, const Score& score) {
  const Source source("written.passage", written);
  const ReadResult again = read_notation(source);
  CAPTURE(written, render(source, again.diagnostics));
  REQUIRE(again.diagnostics.errors == 0);
  REQUIRE(score_text(again.score) == score_text(score));
  REQUIRE(again.score == score);
}

void check_extremes(const Score& score) {
  check_read_back(write_passage(score), score);
  for (const Passage& passage : score.passages) {
    for (const std::int32_t bar : bars_of(passage)) {
      const Excerpt part = excerpt(score, {bar, bar});
      check_read_back(write_excerpt(score, part), part.score);
      check_read_back(write_passage(only_bars(score, {bar, bar})), only_bars(score, {bar, bar}));
    }
  }
}

/// Values of parts of a score whose quarter notes have up to a million divisions each.
constexpr std::array<Fraction, 9> kValues{{{1, 4000000},
                                           {3999999, 4000000},
                                           {1, 4000000000000},
                                           {9999999999999999, 4000000000000},
                                           {3, 8000000000000},
                                           {1, 999999},
                                           {1234567, 4},
                                           {999999, 1},
                                           {2, 3000000}}};

/// The score with its bars moved to the highest there are, and with extreme values.
Score with_extremes(Score score, Chance& chance) {
  for (Passage& passage : score.passages) {
    const std::vector<std::int32_t> bars = bars_of(passage);
    const std::int32_t up = bars.empty() ? 0 : kHighestBar - bars.back();
    for (Line& line : passage.lines) {
      for (Event& event : line.events) {
        event.bar += up;
        if (event.duration && !event.grace && chance.one_in(2)) {
          const Fraction value = chance.one_of(kValues);
          event.duration = reduced(value.numerator, value.denominator);
        }
      }
    }
    for (auto& meter : passage.meters) meter.bar += up;
    for (auto& tempo : passage.tempos) tempo.bar += up;
    for (auto& key : passage.keys) key.bar += up;
    for (auto& note : passage.notes) note.bar += up;
    for (auto& comment : passage.comments) comment.bar += up;
  }
  return score;
}

bool set_all_onsets(Score& score) {
  bool exact = true;
  for (Passage& passage : score.passages) exact &= set_onsets(passage);
  return exact;
}

std::string part(const std::string& id, const std::string& divisions, const std::string& bars) {
  return R"(<part id=")" + id + R"("><measure number="999998"><attributes><divisions>)" +
         divisions +
         "</divisions></attributes><note><pitch><step>C</step><octave>4</octave></pitch>"
         "<duration>1</duration></note></measure>" +
         bars + "</part>";
}

}  // namespace

TEST_CASE("scores of extreme bars and values are written and read back") {
  constexpr std::uint64_t kSeeds = 400;
  std::size_t exact = 0;
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    Chance chance(seed);
    Score score = with_extremes(random_score(seed), chance);
    if (!set_all_onsets(score)) continue;
    CAPTURE(seed);
    ++exact;
    check_extremes(score);
  }
  CHECK(exact > kSeeds / 2);
}

TEST_CASE("bars that are counted past the highest printed number are written and read back") {
  const ReadResult read =
      read_notation(Source("a", "bar: 999999\n1/4 C4:1 | D:2 | E:3 |\nbar: 1000009\nF:4 | G:5"));
  REQUIRE(read.ok());
  CHECK(bars_of(read.score.passages.at(0)).back() == 1000010);
  check_extremes(read.score);
}

TEST_CASE("a score whose parts are divided finely and apart is written and read back") {
  const std::string bars =
      "<measure number=\"1234567\"><note><pitch><step>D</step><octave>4</octave></pitch>"
      "<duration>999999999</duration></note></measure><measure><note><pitch><step>E</step>"
      "<octave>4</octave></pitch><duration>7</duration></note></measure>";
  const std::string musicxml =
      "<score-partwise><part-list><score-part id=\"P1\"><part-name>Piano RH</part-name>"
      "</score-part><score-part id=\"P2\"><part-name>Piano "
      "LH</part-name></score-part></part-list>" +
      part("P1", "1000000", bars) + part("P2", "999983", bars) + "</score-partwise>";
  const Source source("score.musicxml", musicxml);
  ReadResult read = read_musicxml(source);
  REQUIRE(render(source, read.diagnostics) == "");
  REQUIRE(read.score.passages.at(0).lines.size() == 2);
  CHECK(bars_of(read.score.passages[0]).back() == 1000000);
  read.score.passages[0].remarks.clear();
  check_extremes(read.score);
}
