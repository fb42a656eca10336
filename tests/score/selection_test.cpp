#include "catch.hpp"
#include "fingerturn/score.hpp"
#include "score/building.hpp"
#include "score/score_text.hpp"

#include <string>
#include <vector>

using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

Event note_in(std::int32_t bar, std::string_view pitch) {
  return event_of(bar, kQuarter, {note_of(pitch, 1)});
}

/// Four bars of two quarters for the right hand, the last two for the left as well.
Score score_of_two_hands() {
  Passage passage = passage_of(
      {line_of(Hand::right,
               {note_in(1, "C4"), note_in(1, "D4"), note_in(2, "E4"), note_in(2, "F4"),
                note_in(3, "G4"), note_in(3, "A4"), note_in(4, "B4"), note_in(4, "C5")},
               {{0, BarLineStyle::repeat_start},
                {2, BarLineStyle::single},
                {4, BarLineStyle::repeat_end},
                {6, BarLineStyle::single},
                {8, BarLineStyle::double_bar}}),
       line_of(Hand::left, {note_in(3, "C3"), note_in(4, "E3")}, {{1, BarLineStyle::single}})});
  passage.meters = {{1, {2, 4}}, {4, {3, 4}}};
  passage.tempos = {{1, {{1, 4}, 60}}, {2, {{1, 4}, 80}}};
  return {{passage}};
}

std::string first_line(const Score& score) { return line_text(score.passages[0].lines[0]); }

}  // namespace

TEST_CASE("the score of one hand has only its lines") {
  const Score score = score_of_two_hands();
  const Score left = only_hand(score, Hand::left);
  REQUIRE(left.passages[0].lines.size() == 1);
  CHECK(left.passages[0].lines[0] == score.passages[0].lines[1]);
  CHECK(left.passages[0].meters == score.passages[0].meters);
  CHECK(only_hand(score, Hand::right).passages[0].lines[0] == score.passages[0].lines[0]);
  CHECK(only_hand(left, Hand::right).passages[0].lines.empty());
}

TEST_CASE("some bars out of a score begin at time zero and keep their numbers") {
  const Score cut = only_bars(score_of_two_hands(), {3, 4});
  REQUIRE(cut.passages[0].lines.size() == 2);
  CHECK(first_line(cut) ==
        "right hand\n:|\n3  0  1/4  G4:1\n3  1/4  1/4  A4:1\n|\n4  1/2  1/4  B4:1\n"
        "4  3/4  1/4  C5:1\n||\n");
  CHECK(line_text(cut.passages[0].lines[1]) ==
        "left hand\n3  0  1/4  C3:1\n|\n4  1/2  1/4  E3:1\n");
}

TEST_CASE("a hand that plays nothing in the bars has no line") {
  const Score cut = only_bars(score_of_two_hands(), {1, 2});
  REQUIRE(cut.passages[0].lines.size() == 1);
  CHECK(first_line(cut) ==
        "right hand\n|:\n1  0  1/4  C4:1\n1  1/4  1/4  D4:1\n|\n2  1/2  1/4  E4:1\n"
        "2  3/4  1/4  F4:1\n:|\n");
  CHECK(only_bars(score_of_two_hands(), {9, 12}).passages[0].lines.empty());
}

TEST_CASE("a plain bar line before the first chosen bar is left out") {
  CHECK(first_line(only_bars(score_of_two_hands(), {2, 2})) ==
        "right hand\n2  0  1/4  E4:1\n2  1/4  1/4  F4:1\n:|\n");
  CHECK(first_line(only_bars(score_of_two_hands(), {4, 4})) ==
        "right hand\n4  0  1/4  B4:1\n4  1/4  1/4  C5:1\n||\n");
}

TEST_CASE("the meter and tempo that hold at the first chosen bar stand there") {
  const Passage passage = only_bars(score_of_two_hands(), {3, 4}).passages[0];
  CHECK(passage.meters == std::vector<FromBar<Meter>>{{3, {2, 4}}, {4, {3, 4}}});
  CHECK(passage.tempos == std::vector<FromBar<Tempo>>{{3, {{1, 4}, 80}}});
}

TEST_CASE("changes after the chosen bars are left out") {
  const Passage passage = only_bars(score_of_two_hands(), {1, 1}).passages[0];
  CHECK(passage.meters == std::vector<FromBar<Meter>>{{1, {2, 4}}});
  CHECK(passage.tempos == std::vector<FromBar<Tempo>>{{1, {{1, 4}, 60}}});
}

TEST_CASE("a continuation whose beginning is cut off gets the finger that is on its key") {
  const auto cut = [](std::vector<Note> before, std::vector<Note> first, std::vector<Note> second) {
    std::vector<Event> events;
    events.push_back(event_of(1, kQuarter, std::move(before)));
    events.push_back(event_of(2, kQuarter, std::move(first)));
    events.push_back(event_of(2, kQuarter, std::move(second)));
    const Score score{{passage_of({line_of(Hand::right, std::move(events))})}};
    const std::string text = first_line(only_bars(score, {2, 2}));
    return text.substr(text.find('\n') + 1);
  };
  const Note c4 = note_of("C4");
  CHECK(cut({tied(note_of("C4", 4))}, {held(c4)}, {note_of("D4", 5)}) ==
        "2  0  1/4  C4:4\n2  1/4  1/4  D4:5\n");
  CHECK(cut({tied(changing(note_of("C4", 4), {2, 1}))}, {held(c4)}, {}) ==
        "2  0  1/4  C4:1\n2  1/4  1/4  r\n");
  CHECK(cut({tied(note_of("C4", 4))}, {held(note_of("C4", 1))}, {}) ==
        "2  0  1/4  C4:1\n2  1/4  1/4  r\n");
  CHECK(cut({tied(note_of("C4", 4))}, {tied(held(c4))}, {held(c4)}) ==
        "2  0  1/4  C4:4~\n2  1/4  1/4  (C4)\n");
  CHECK(cut({tied(note_of("C4", 4))}, {note_of("D4", 5)}, {held(c4)}) ==
        "2  0  1/4  D4:5\n2  1/4  1/4  C4:4\n");
  CHECK(cut({tied(c4)}, {held(c4)}, {}) == "2  0  1/4  C4\n2  1/4  1/4  r\n");
  Note suggested = tied(note_of("C4", 4));
  suggested.suggested = true;
  CHECK(cut({suggested}, {held(c4)}, {}) == "2  0  1/4  C4:4?\n2  1/4  1/4  r\n");
}

TEST_CASE("a tie into the chosen bars becomes a note to strike, one within them stays") {
  Passage passage = passage_of({line_of(Hand::right,
                                        {event_of(1, kQuarter, {tied(note_of("C4", 1))}),
                                         event_of(2, kQuarter, {tied(held(note_of("C4", 1)))}),
                                         event_of(3, kQuarter, {held(note_of("C4", 1))})},
                                        {{1, BarLineStyle::single}, {2, BarLineStyle::single}})});
  const Score score{{passage}};
  CHECK(first_line(only_bars(score, {2, 3})) ==
        "right hand\n2  0  1/4  C4:1~\n|\n3  1/4  1/4  (C4:1)\n");
  CHECK(first_line(only_bars(score, {1, 3})) ==
        "right hand\n1  0  1/4  C4:1~\n|\n2  1/4  1/4  (C4:1)~\n|\n3  1/2  1/4  (C4:1)\n");
  // One that leads out of them is dropped.
  CHECK(first_line(only_bars(score, {1, 1})) == "right hand\n1  0  1/4  C4:1\n|\n");
}

TEST_CASE("all bars of a score are the score") {
  Score score = only_bars(score_of_two_hands(), {1, 4});
  CHECK(only_bars(score, {1, 4}) == score);
  CHECK(only_bars(score, {0, 999999}) == score);
}

TEST_CASE("each passage is cut by itself, and keeps its place among the others") {
  Score score;
  score.passages.push_back(passage_of({line_of(Hand::right, {note_in(1, "C4")})}));
  score.passages.push_back(passage_of({line_of(Hand::right, {note_in(5, "D4")})}));
  const Score cut = only_bars(score, {5, 5});
  REQUIRE(cut.passages.size() == 2);
  CHECK(cut.passages[0].lines.empty());
  CHECK(cut.passages[1].lines.size() == 1);
}
