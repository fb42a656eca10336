#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

/// The places that ask most (docs/rules.md, 6.4): our convention, counted by hand.
namespace fingerturn {
namespace {

AnalysedScore analysed(const std::string& text) {
  const Source source("test", text);
  const ReadResult result = read_notation(source);
  REQUIRE(render(source, result.diagnostics) == "");
  return AnalysedScore("test", result.score);
}

std::vector<PracticePlace> places_in(const AnalysedScore& shown) {
  REQUIRE(shown.size() == 1);
  REQUIRE(shown[0].found().places);
  return *shown[0].found().places;
}

std::vector<PracticePlace> places_in(const std::string& text) {
  return places_in(only_places(analysed(text)));
}

using Bars = std::vector<std::pair<std::int32_t, std::int32_t>>;

Bars bars_of(const std::vector<PracticePlace>& places) {
  Bars bars;
  for (const PracticePlace& place : places) bars.emplace_back(place.bars.first, place.bars.last);
  return bars;
}

/// Nothing in a row, nothing passed: a bar that asks nothing.
constexpr const char* kEasy = " 1/4 C4:1 E:3 C:1 E:3 |";

std::string easy(std::size_t bars) {
  std::string text;
  for (std::size_t i = 0; i < bars; ++i) text += kEasy;
  return text;
}

TEST_CASE("a bar with a row of doubles is shown with the bars around it", "[rules][places]") {
  // Single, single, double, double, double in the fourth bar.
  const auto places = places_in("RH:" + easy(3) + " 1/4 C4:1 D:2 E:3 F:4 G:5 |" + easy(3));
  REQUIRE(bars_of(places) == Bars{{3, 5}});
  REQUIRE(places[0].asking.size() == 1);
  CHECK(places[0].asking[0] == BarDemand{.bar = 4, .doubles = 3, .points = 3});
}

TEST_CASE("a lone double is no row", "[rules][places]") {
  CHECK(places_in("RH:" + easy(3) + " 1/4 C4:1 D:2 E:3 C:1 |" + easy(3)).empty());
}

TEST_CASE("a row of doubles across a bar line counts where its doubles stand", "[rules][places]") {
  const auto places = places_in("RH:" + easy(4) + " 1/4 C4:1 D:2 E:3 | F:4 G:5 D:2 C:1 |");
  // A double before the line, then two behind it, and D C: single, double alone.
  CHECK(places.empty());
  const auto more = places_in("RH:" + easy(4) + " 1/4 C4:1 D:2 E:3 | F:4 G:5 F:4 E:3 D:1 |");
  REQUIRE(bars_of(more) == Bars{{5, 6}});
  // Two of the first row, and two of the way back.
  CHECK(more[0].asking == std::vector{BarDemand{.bar = 6, .doubles = 4, .points = 4}});
}

TEST_CASE("passings and carries count one each", "[rules][places]") {
  // Thumb under, carried by four white keys; then two doubles in a row.
  const auto places = places_in("RH:" + easy(4) + " 1/8 C4:1 D:2 E:3 F:1 G:2 A:3 B:4 |" + easy(1));
  REQUIRE(bars_of(places) == Bars{{4, 6}});
  const BarDemand& asks = places[0].asking.at(0);
  CHECK(asks.bar == 5);
  CHECK(asks.passings == 1);
  CHECK(asks.doubles == 2);
  CHECK(asks.points == asks.doubles + asks.passings + asks.carries);
}

TEST_CASE("a carry that is not far counts where it is fast", "[rules][places]") {
  // Two white keys in a thirty-second: 16 a second at quarter = 60, 32 at 120.
  const std::string there = " C4:3 G4:3 r r";
  const std::string four = there + there + there + there;
  const std::string notes = "RH:" + easy(2) + " 1/32" + four + four + " |" + easy(1);
  const auto slow = places_in("tempo: 60\n" + notes);
  const auto fast = places_in("tempo: 120\n" + notes);
  REQUIRE(slow.size() == 1);
  REQUIRE(fast.size() == 1);
  CHECK(slow[0].asking.at(0).carries == 0);
  CHECK(fast[0].asking.at(0).carries == 8);
  // Of the swings in them there is less time as well.
  CHECK(fast[0].asking[0].points - fast[0].asking[0].small_swings ==
        slow[0].asking[0].points - slow[0].asking[0].small_swings + 8);
}

TEST_CASE("a leap counts two, a quick one three, and neither as a carry", "[rules][places]") {
  const std::string notes = "RH:" + easy(3) + " 1/4 C4:1 C:1 C6:1 C:1 C4:1 |" + easy(3);
  const auto leaps = places_in(notes);
  REQUIRE(leaps.size() == 1);
  CHECK(leaps[0].asking.at(0).leaps == 2);
  CHECK(leaps[0].asking[0].carries == 0);
  const auto quick = places_in("tempo: 200\n" + notes);
  REQUIRE(quick.size() == 1);
  CHECK(quick[0].asking.at(0).leaps == 2);
  CHECK(quick[0].asking[0].points == leaps[0].asking[0].points + 2);
}

TEST_CASE("what is on the watch list counts by its level, once", "[rules][places]") {
  // 2-4 over a sixth is two semitones past the practical: a caution. A third more: a strain.
  const auto caution = places_in("RH:" + easy(3) + " 1/4 C4:2+A4:4 |" + easy(3));
  REQUIRE(caution.size() == 1);
  CHECK(caution[0].asking ==
        std::vector{BarDemand{.bar = 4, .findings = 1, .finding_points = 3, .points = 3}});
  const auto strain = places_in("RH:" + easy(3) + " 1/4 C4:2+C5:4 |" + easy(3));
  REQUIRE(strain.size() == 1);
  CHECK(strain[0].asking ==
        std::vector{BarDemand{.bar = 4, .findings = 1, .finding_points = 5, .points = 5}});
}

TEST_CASE("missing fingers count nothing, and swings one where less than 4/5 is left",
          "[rules][places]") {
  CHECK(places_in("RH:" + easy(3) + " 1/4 C4 D E F |" + easy(3)).empty());
  // Single swings in 1/32, eight to a quarter: 10.7 a second at 80, 21.3 at 160.
  const std::string notes = "RH:" + easy(3) + " 1/32 C4:1 E:3 C:1 E:3 |" + easy(3);
  CHECK(places_in("tempo: 80\n" + notes).empty());
  const auto fast = places_in("tempo: 160\n" + notes);
  REQUIRE(fast.size() == 1);
  CHECK(fast[0].asking == std::vector{BarDemand{.bar = 4, .small_swings = 3, .points = 3}});
}

TEST_CASE("a quick passing counts two, a double over a held key two", "[rules][places]") {
  const std::string run = " 1/16 C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C5:5 |";
  const auto slow = places_in("tempo: 60\nRH:" + easy(3) + run + easy(3));
  const auto fast = places_in("tempo: 120\nRH:" + easy(3) + run + easy(3));
  REQUIRE(slow.size() == 1);
  REQUIRE(fast.size() == 1);
  CHECK(slow[0].asking.at(0).passings == 1);
  CHECK(slow[0].asking[0].quick_passings == 0);
  CHECK(fast[0].asking.at(0).quick_passings == 1);
  CHECK(fast[0].asking[0].points == slow[0].asking[0].points + 1 + fast[0].asking[0].small_swings);
  const auto held = places_in("RH:" + easy(3) + " 1/4 C4:1=5/4+D:2 E:3 F:4 G:5 r |" + easy(3));
  REQUIRE(held.size() == 1);
  CHECK(held[0].asking.at(0).held >= 2);
}

TEST_CASE("where one hand is single and the other double counts one", "[rules][places]") {
  const std::string still = " 1/4 C3:1 A2:3 C:1 A:3 |";
  const auto places = places_in("RH:" + easy(2) + " 1/4 C4:1 D:2 E:3 F:4 |" + easy(2) +
                                "\nLH:" + still + still + still + still + still);
  REQUIRE(places.size() == 1);
  // C and D single, E and F double; the left hand is single throughout.
  CHECK(places[0].asking ==
        std::vector{BarDemand{.bar = 3, .doubles = 2, .kinds_differ = 2, .points = 4}});
}

TEST_CASE("the same information counts once in a bar", "[rules][places]") {
  // The thumb on a black key and 3 on a white one, twice.
  const std::string twice = " 1/4 Eb4:1+G4:3 Ab4:1+C5:3 C4:1 D:2 En:3 F:4 G:5 |";
  const auto places = places_in("RH:" + easy(3) + twice + easy(3));
  REQUIRE(places.size() == 1);
  CHECK(places[0].asking.at(0).findings == 1);
  CHECK(places[0].asking[0].finding_points == 1);
}

TEST_CASE("both hands count together", "[rules][places]") {
  const std::string row = " 1/4 C4:1 D:2 E:3 F:4 |";
  const std::string mirrored = " 1/4 C3:1 B2:2 A:3 G:4 |";
  CHECK(places_in("RH:" + easy(2) + row + easy(2)).empty());
  const std::string still = " 1/4 C3:1 A2:3 C:1 A:3 |";
  const auto places = places_in("RH:" + easy(2) + row + easy(2) + "\nLH:" + still + still +
                                mirrored + still + still);
  REQUIRE(bars_of(places) == Bars{{2, 4}});
  CHECK(places[0].asking == std::vector{BarDemand{.bar = 3, .doubles = 4, .points = 4}});
}

TEST_CASE("places that meet are one, others stand apart", "[rules][places]") {
  const std::string row = " 1/4 C4:1 D:2 E:3 F:4 G:5 |";
  CHECK(bars_of(places_in("RH:" + row + easy(3) + row + easy(4))) == Bars{{1, 2}, {4, 6}});
  CHECK(bars_of(places_in("RH:" + row + easy(2) + row + easy(4))) == Bars{{1, 5}});
  CHECK(bars_of(places_in("RH:" + easy(5) + row)) == Bars{{5, 6}});
}

TEST_CASE("a bar must ask half again the average, or most of all", "[rules][places]") {
  const std::string three = " 1/4 C4:1 D:2 E:3 F:4 G:5 |";
  const std::string six = three.substr(0, three.size() - 2) + " F:4 E:3 D:2 C:1 |";
  // On average 3 and 0: in an even passage all bars ask most.
  CHECK(bars_of(places_in("RH:" + three + three + three)) == Bars{{1, 3}});
  // 3, 3, 3, 6: 3.75 on average, of which 6 is more than half again as much.
  CHECK(bars_of(places_in("RH:" + three + three + three + six)) == Bars{{3, 4}});
  // 3, 0, 0, 0, 0, 6: 1.5 on average, and 3 is twice that.
  CHECK(bars_of(places_in("RH:" + three + easy(4) + six)) == Bars{{1, 2}, {5, 6}});
  // 3, 0, 0, 6: 2.25 on average, and 3 is less than 3.375.
  CHECK(bars_of(places_in("RH:" + three + easy(2) + six)) == Bars{{3, 4}});
}

TEST_CASE("only the places' bars are left, counted anew", "[rules][places]") {
  const std::string row = " 1/4 C4:1 D:2 E:3 F:4 G:5 |";
  const AnalysedScore shown = only_places(analysed("RH:" + row + easy(3) + row + easy(4)));
  const AnalysedPassage passage = shown[0];
  for (std::int32_t bar = 0; bar < 12; ++bar) {
    CHECK(passage.found().shows(bar) == (bar == 1 || bar == 2 || (bar >= 4 && bar <= 6)));
  }
  for (const auto& [written, found] : passage[0]) CHECK(passage.found().shows(written.bar));
  CHECK(passage[0].size() == 5 + 4 + 4 + 5 + 4);
  CHECK(passage[0].found().totals.events == passage[0].size());
}

TEST_CASE("a row of doubles does not go on over bars that are left out", "[rules][places]") {
  // What is shown before the gap ends with two doubles, what is shown after it begins with two.
  const std::string row = " 1/4 C4:1 D:2 E:3 F:4 G:5 |";
  const std::string ends = " 1/4 E4:3 C:1 D:2 E:3 F:4 |";
  const std::string begins = " 1/4 F4:4 G:5 C4:1 E:3 |";
  const AnalysedScore some =
      only_places(analysed("RH:" + easy(3) + row + ends + easy(4) + begins + row + easy(3)));
  REQUIRE(bars_of(places_in(some)) == Bars{{3, 5}, {10, 12}});
  const std::vector<EventAnalysis>& events = some[0][0].found().events;
  const auto after_gap = std::ranges::find(events, 10, [&](const EventAnalysis& event) {
    return some[0][0].written().events[event.event].bar;
  });
  CHECK(std::prev(after_gap)->rotation == Rotation::double_rotation);
  CHECK(after_gap->rotation == Rotation::double_rotation);
  CHECK(some[0][0].found().totals.longest_double_run == 3);
}

TEST_CASE("with the places every bar tells its doubles, of both hands together",
          "[rules][places]") {
  const std::string right = "RH:" + easy(2) + " 1/4 C4:1 D:2 E:3 F:4 G:5 |" + easy(2);
  const std::string left = "\nLH: 1/1 r | r | 1/4 C3:1 B2:2 A:3 G:4 F:5 | 1/1 r | r |";
  const AnalysedScore shown = only_places(analysed(right + left));
  const std::vector<BarDoubles> expected{{1, 0}, {2, 0}, {3, 6}, {4, 0}, {5, 0}};
  CHECK(shown[0].found().doubles == expected);
}

TEST_CASE("places of some bars lie within them", "[rules][places]") {
  const std::string row = " 1/4 C4:1 D:2 E:3 F:4 G:5 |";
  const AnalysedScore some = only_bars(analysed("RH:" + row + easy(8) + row + easy(2)), {7, 10});
  CHECK(bars_of(places_in(only_places(some))) == Bars{{9, 10}});
}

TEST_CASE("a score without notes has no places", "[rules][places]") {
  const Source source("test", "passage: nothing\n");
  const AnalysedScore shown = only_places(AnalysedScore("test", read_notation(source).score));
  REQUIRE(shown.size() == 1);
  CHECK(shown[0].found().places->empty());
}

}  // namespace
}  // namespace fingerturn
