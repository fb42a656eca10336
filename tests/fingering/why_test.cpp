#include "fingerturn/why.hpp"

#include "catch.hpp"
#include "fingering/made_tasks.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/read.hpp"
#include "rules/made_lines.hpp"
#include "rules/random_passage.hpp"
#include "score/file_reading.hpp"

#include <numeric>
#include <string>
#include <string_view>
#include <vector>

/// Why a finger is taken, and what is wished for instead.
namespace fingerturn {
namespace {

Score score_written(std::string_view notation) {
  const Source source("why", std::string(notation));
  return read_notation(source).score;
}

std::string fingers_wishing(std::string_view notation, const FingerWishes& wishes) {
  FingeringOptions options;
  options.wishes = wishes;
  const Score complete = with_suggestions(score_written(notation), options);
  return fingers_of(complete.passages.at(0).lines.at(0));
}

double sum_of(const std::vector<TermDifference>& terms) {
  return std::accumulate(terms.begin(), terms.end(), 0.0,
                         [](double sum, const TermDifference& term) { return sum + term.harder; });
}

}  // namespace

TEST_CASE("why: the terms add up, and what is taken is the easiest", "[fingering][why]") {
  Chance chance(seed_of_this_run());
  std::size_t told = 0;
  for (int i = 0; i < 60; ++i) {
    std::string notation = "meter: 4/4\n1/8";
    int key = 60;
    for (int n = 0; n < 8; ++n) {
      notation += " " + to_string(note_on(key, kNoFinger).pitch);
      if (chance.percent(20)) notation += "+" + to_string(note_on(key + 7, kNoFinger).pitch);
      key += chance.between(-5, 5);
    }
    INFO(notation);
    const Score score = score_written(notation);
    const Score complete = with_suggestions(score);
    for (int eighth = 0; eighth < 8; ++eighth) {
      const std::vector<WhyFingers> why = why_fingers(score, {1, 1 + eighth / 2.0});
      REQUIRE(why.size() == 1);
      CHECK_FALSE(why[0].all_given);
      const Event& event =
          complete.passages[0].lines[0].events.at(static_cast<std::size_t>(eighth));
      REQUIRE(why[0].fingers == struck_fingers(event));
      for (const OtherFingers& other : why[0].others) {
        REQUIRE(other.fingers != why[0].fingers);
        REQUIRE(other.harder >= 0);
        REQUIRE(sum_of(other.terms) == Approx(other.harder).margin(1e-6));
        ++told;
      }
    }
  }
  CHECK(told > 500);
}

TEST_CASE("why: a given finger is compared as if it were not given", "[fingering][why]") {
  const auto why = why_fingers(score_written("meter: 4/4\n1/8 G4:1 A B C5 B A G F"), {1, 1});
  REQUIRE(why.size() == 1);
  CHECK(why[0].all_given);
  CHECK(why[0].fingers == std::vector<Finger>{1});
  REQUIRE_FALSE(why[0].others.empty());
  CHECK(why[0].others[0].harder < 0);  // the thumb has the F to come down to
}

TEST_CASE("why: both hands, and nothing where nothing is struck", "[fingering][why]") {
  const Score score = score_written("meter: 4/4\nRH: 1/4 C5 D E F |\nLH: 1/2 C3 E3 |");
  CHECK(why_fingers(score, {1, 1}).size() == 2);
  CHECK(why_fingers(score, {1, 2}).size() == 1);
  CHECK(why_fingers(score, {1, 1.5}).empty());
  CHECK(why_fingers(score, {2, 1}).empty());
  CHECK(why_fingers(score_written("C4 D E"), {1, 1}).empty());  // no beats are known
  const auto second = why_fingers(score, {1, 3});
  CHECK(second.at(1).hand == Hand::left);
  CHECK(second.at(1).pitches == std::vector<Pitch>{*parse_pitch("E3")});
}

TEST_CASE("wishes: two fingers are avoided where there is another way", "[fingering][wishes]") {
  const std::string_view notation = "1/8 C4 D E F G F E D C";
  CHECK(fingers_wishing(notation, {}) == "1 2 3 4 5 4 3 2 1");
  const std::string avoiding = fingers_wishing(notation, {.avoid = {{4, 5}}});
  CHECK(avoiding.find("4 5") == std::string::npos);
  CHECK(avoiding.find("5 4") == std::string::npos);
  CHECK(fingers_wishing(notation, {.avoid = {{0, 9}}}) == "1 2 3 4 5 4 3 2 1");
  // Given fingers stay.
  CHECK(fingers_wishing("1/8 F4:4 G:5", {.avoid = {{4, 5}}}) == "4 5");
}

TEST_CASE("wishes: the thumb stays on white keys", "[fingering][wishes]") {
  const std::string_view notation = "1/8 F#4 G# A# C#5 D# F# G# A#";
  CHECK(fingers_wishing(notation, {}).find('1') != std::string::npos);
  CHECK(fingers_wishing(notation, {.thumb_on_white = true}).find('1') == std::string::npos);
  CHECK(fingers_wishing("1/8 C4 D E", {.thumb_on_white = true}) ==
        fingers_wishing("1/8 C4 D E", {}));
}

TEST_CASE("wishes: what is suggested in some bars is kept", "[fingering][wishes]") {
  const Score score = score_written("1/8 C4:4? D:5? E F | G:5? A:1? B:3 C5");
  const Line kept = without_suggestions_outside(score, {1, 1}).passages.at(0).lines.at(0);
  CHECK(fingers_of(kept) == "4 5 . . . . 3 .");
}

}  // namespace fingerturn
