#include "catch.hpp"
#include "views/made_plans.hpp"

#include <algorithm>
#include <cstdint>
#include <string>
#include <vector>

/// How far fingerings agree, and which events are compared.
namespace fingerturn {
namespace {

Comparison compared(const AnalysedScore& one, const AnalysedScore& other,
                    ComparedEvents events = ComparedEvents::all) {
  return compare("test", {{"one", one[0]}, {"other", other[0]}}, events);
}

constexpr const char* kMine = "meter: 4/4\n1/4 C4:1 D:2 E:3 F:1 | G:2 A B:4 C5:5 |";
constexpr const char* kYours = "meter: 4/4\n1/4 C4:1 D:2 E:3 F:4 | G:5 A:3 B:4 C5:5 |";

}  // namespace

TEST_CASE("agreement is counted by hand and by bar", "[compare]") {
  const AnalysedScore mine = analysed_from(kMine);
  const AnalysedScore yours = analysed_from(kYours);
  const Comparison all = compared(mine, yours);
  REQUIRE(all.hands.size() == 1);
  const HandComparison& hand = all.hands.front();
  CHECK(hand.compared.size() == 8);
  REQUIRE(hand.agreement.size() == 2);
  // Of F, the thumb under is a single to the left; 4 stays on its side.
  CHECK(hand.agreement[0] == BarAgreement{1, {4, 3, 3}});
  CHECK(hand.agreement[1].agreement.fingers == 2);
  CHECK(hand.in_all().events == 8);
  CHECK(hand.in_all().fingers == 5);
}

TEST_CASE("only what is fingered in all is compared where that is asked for", "[compare]") {
  const AnalysedScore mine = analysed_from(kMine);
  const AnalysedScore yours = analysed_from(kYours);
  const Comparison some = compared(mine, yours, ComparedEvents::fingered_in_all);
  CHECK(some.hands.front().compared == std::vector<std::size_t>{0, 1, 2, 3, 4, 6, 7});
  CHECK(some.hands.front().agreement[1].agreement.events == 3);
  CHECK(std::ranges::none_of(some.hands.front().differing,
                             [](const DifferingEvent& event) { return event.number == 5; }));
}

TEST_CASE("what differs is what does not agree, in any music", "[compare]") {
  const std::uint64_t seed = seed_of_this_run();
  INFO("repeat with " << kSeedVariable << "=" << seed);
  Chance chance(seed);
  for (int round = 0; round < 60; ++round) {
    const Score score = random_piece(chance);
    Score other = score;
    for (Line& line : other.passages.front().lines) {
      for (Event& event : line.events) {
        if (!event.notes.empty() && chance.percent(20)) {
          event.notes.front().finger = static_cast<Finger>(chance.between(1, 5));
        }
      }
    }
    const AnalysedScore one("one", score);
    const AnalysedScore two("two", other);
    for (const ComparedEvents events : {ComparedEvents::all, ComparedEvents::fingered_in_all}) {
      for (const HandComparison& hand : compared(one, two, events).hands) {
        const Agreement all = hand.in_all();
        CHECK(all.events == hand.compared.size());
        CHECK(all.fingers <= all.events);
        CHECK(all.turns <= all.events);
        // An event that differs does so in its fingers, its turn or both.
        CHECK(hand.differing.size() >= all.events - std::min(all.fingers, all.turns));
        CHECK(hand.differing.size() <= 2 * all.events - all.fingers - all.turns);
        CHECK(std::ranges::all_of(hand.differing, [&](const DifferingEvent& event) {
          return std::ranges::binary_search(hand.compared, event.number);
        }));
      }
      // With itself everything agrees.
      for (const HandComparison& hand : compared(one, one, events).hands) {
        CHECK(hand.in_all().is_full());
        CHECK(hand.differing.empty());
      }
    }
  }
}

TEST_CASE("the fingers that are offered beside others are fingerings", "[compare]") {
  Score score = score_from("C4:1 D:2>3 E:3?");
  std::vector<Event>& events = score.passages.front().lines.front().events;
  CHECK(alternate_fingerings(score).empty());
  events[1].notes.front().alternatives = {4, 5};
  events[2].notes.front().alternatives = {1};
  const std::vector<Score> others = alternate_fingerings(score);
  REQUIRE(others.size() == 2);
  CHECK(write_passage(others[0]) == "C4:1 D4:4 E4:1\n");
  CHECK(write_passage(others[1]) == "C4:1 D4:5 E4:3?\n");
}

}  // namespace fingerturn
