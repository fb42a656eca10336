#include "fingerturn/analysed.hpp"

#include "catch.hpp"
#include "score/timeline.hpp"
#include "write/random_score.hpp"

#include <utility>
#include <vector>

/// Music with what was found in it: the views lead through the same as the two trees.
namespace fingerturn {
namespace {

TEST_CASE("views show each struck event with what was found in it", "[rules]") {
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    CAPTURE(seed);
    const Score score = tests::random_score(seed);
    const Analysis analysis = analyse(score);
    const AnalysedScore analysed("by chance", score);
    REQUIRE(analysed.size() == score.passages.size());
    std::size_t p = 0;
    for (const AnalysedPassage passage : analysed) {
      CHECK(passage.written() == score.passages[p]);
      REQUIRE(passage.size() == score.passages[p].lines.size());
      std::size_t l = 0;
      for (const AnalysedLine line : passage) {
        const std::vector<EventAnalysis>& expected = analysis.passages[p].lines[l].events;
        CHECK(line.written() == score.passages[p].lines[l]);
        REQUIRE(line.size() == expected.size());
        std::size_t e = 0;
        for (const auto& [written, found] : line) {
          CHECK(found.event == expected[e].event);
          CHECK(found.rotation == expected[e].rotation);
          CHECK(written == line.written().events[found.event]);
          CHECK(written.struck_count() > 0);
          ++e;
        }
        CHECK(e == expected.size());
        for (const Finding& finding : line.found().watch) {
          CHECK(line.event_of(finding) == line[finding.index].written);
        }
        ++l;
      }
      ++p;
    }
    CHECK(p == score.passages.size());
  }
}

AnalysedScore both_hands() {
  Score score;
  Passage& passage = score.passages.emplace_back();
  for (const Hand hand : {Hand::right, Hand::left}) {
    Line& line = passage.lines.emplace_back();
    line.hand = hand;
    for (const std::int32_t bar : {1, 2, 2}) {
      Event& event = line.events.emplace_back();
      event.bar = bar;
      event.notes.emplace_back().finger = kThumb;
    }
  }
  return AnalysedScore("both", std::move(score));
}

TEST_CASE("a line is found by its hand", "[rules]") {
  AnalysedScore analysed = both_hands();
  CHECK(analysed[0].of_hand(Hand::left)->hand() == Hand::left);
  CHECK(&analysed[0].of_hand(Hand::left)->written() == &analysed.written().passages[0].lines[1]);
  analysed = AnalysedScore("right", only_hand(analysed.written(), Hand::right));
  CHECK(analysed.name() == "right");
  CHECK(analysed[0].of_hand(Hand::right).has_value());
  CHECK_FALSE(analysed[0].of_hand(Hand::left).has_value());
}

TEST_CASE("some bars leave the score whole and count anew what was found", "[rules]") {
  const AnalysedScore whole = both_hands();
  const AnalysedScore bar = only_bars(whole, {2, 2});
  CHECK(bar.written() == whole.written());
  CHECK(whole[0][0].size() == 3);
  CHECK_FALSE(whole[0].found().bars.has_value());
  for (const AnalysedLine line : bar[0]) {
    CHECK(line.size() == 2);
    CHECK(line.found().totals.events == 2);
    CHECK(line[0].written.bar == 2);
  }
  REQUIRE(bar[0].found().bars.has_value());
  CHECK(bar[0].found().bars->first == 2);
}

TEST_CASE("some bars keep only their own held keys", "[rules]") {
  Score score;
  Line& line = score.passages.emplace_back().lines.emplace_back();
  for (const std::int32_t bar : {1, 1, 2, 2}) {
    Event& event = line.events.emplace_back();
    event.bar = bar;
    event.duration = Fraction{1, 4};
    Note& note = event.notes.emplace_back();
    note.pitch.octave = static_cast<std::int8_t>(line.events.size() % 2 == 1 ? 3 : 4);
    note.finger = line.events.size() % 2 == 1 ? kFifth : kThumb;
    if (line.events.size() % 2 == 1) note.lasts = Fraction{1, 2};
  }
  line.hand = Hand::left;
  set_onsets(score.passages[0]);
  const AnalysedScore whole("held", score);
  REQUIRE(whole[0][0].found().held.size() == 2);
  const AnalysedScore second = only_bars(whole, {2, 2});
  REQUIRE(second[0][0].found().held.size() == 1);
  CHECK(second[0][0].found().held.front().event == 3);
}

}  // namespace
}  // namespace fingerturn
