#include "catch.hpp"
#include "fingerturn/read.hpp"
#include "write/musicxml/marking.hpp"
#include "write/page/engraved.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

/// Slurs and fermatas of a score, from the reader to the page.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

std::string slur(std::string_view type, int number = 1) {
  return "<slur type=\"" + std::string(type) + "\" number=\"" + std::to_string(number) + "\"/>";
}

/// A quarter note on a key such as "C5" with slurs.
std::string slurred(std::string_view key, const std::string& slurs) {
  return quarter(key, "<notations>" + slurs + "</notations>");
}

AnalysedScore score_of(const std::vector<std::string>& measures) {
  std::vector<std::string> with_time = measures;
  with_time.front().insert(0,
                           "<attributes><divisions>1</divisions><time><beats>4</beats><beat-type>4"
                           "</beat-type></time></attributes>");
  const ReadResult read = read_musicxml(Source("score.musicxml", partwise(with_time)));
  REQUIRE(read.ok());
  return AnalysedScore("score.musicxml", read.score);
}

std::vector<BowInk> slurs_of(const std::vector<System>& systems) {
  std::vector<BowInk> bows;
  for (const Ink& ink : of_kind(systems, InkKind::slur))
    bows.push_back(std::get<BowInk>(ink.shape));
  return bows;
}

/// The middle of the heads, from the left.
std::vector<double> heads_of(const std::vector<System>& systems) {
  std::vector<double> places;
  for (const Ink& ink : of_kind(systems, InkKind::head)) {
    places.push_back((ink.box.left + ink.box.right) / 2);
  }
  std::ranges::sort(places);
  return places;
}

bool near(double one, double other) { return std::abs(one - other) < 0.3; }

const std::string kQuiet = quarter("C5") + quarter("D5") + quarter("E5") + quarter("F5");

}  // namespace

TEST_CASE("a slur goes from the note where it begins to that where it ends", "[page][slurs]") {
  const AnalysedScore music = score_of(
      {quarter("C5") + slurred("D5", slur("start")) + quarter("E5") + slurred("F5", slur("stop"))});
  const std::vector<Event>& events = music.written().passages.at(0).lines.at(0).events;
  CHECK(events.at(1).notes.at(0).slurs_begin == 1);
  CHECK(events.at(1).notes.at(0).slurs_end == 0);
  CHECK(events.at(3).notes.at(0).slurs_end == 1);
  const std::vector<System> systems = systems_of(music);
  const std::vector<BowInk> slurs = slurs_of(systems);
  const std::vector<double> heads = heads_of(systems);
  REQUIRE(slurs.size() == 1);
  CHECK(near(slurs[0].from.x, heads.at(1)));
  CHECK(near(slurs[0].to.x, heads.at(3)));
  CHECK(slurs[0].bend < 0);  // above, as all stems go down
}

TEST_CASE("a slur lies below where all stems go up", "[page][slurs]") {
  const AnalysedScore music = score_of(
      {slurred("C4", slur("start")) + quarter("D4") + slurred("E4", slur("stop")) + quarter("F4")});
  const std::vector<BowInk> slurs = slurs_of(systems_of(music));
  REQUIRE(slurs.size() == 1);
  CHECK(slurs[0].bend > 0);
}

TEST_CASE("slurs in one another end where they do, the outer over the inner", "[page][slurs]") {
  const AnalysedScore music =
      score_of({slurred("C5", slur("start", 1) + slur("start", 2)) +
                slurred("D5", slur("stop", 2)) + quarter("E5") + slurred("F5", slur("stop", 1))});
  const std::vector<System> systems = systems_of(music);
  const std::vector<BowInk> slurs = slurs_of(systems);
  const std::vector<double> heads = heads_of(systems);
  REQUIRE(slurs.size() == 2);
  CHECK(near(slurs[0].to.x, heads.at(1)));
  CHECK(near(slurs[1].to.x, heads.at(3)));
  CHECK(height_of(slurs[1], 0.5) < height_of(slurs[0], 0.5));
}

TEST_CASE("a slur that goes on is drawn in each system", "[page][slurs]") {
  std::vector<std::string> measures(12, kQuiet);
  measures[0] = slurred("C5", slur("start")) + quarter("D5") + quarter("E5") + quarter("F5");
  measures[11] = quarter("C5") + quarter("D5") + quarter("E5") + slurred("F5", slur("stop"));
  const std::vector<System> systems = systems_of(score_of(measures), kNarrowWidth);
  REQUIRE(systems.size() > 2);
  for (const System& system : systems) {
    CHECK(std::ranges::count(system.inks, InkKind::slur, &Ink::kind) == 1);
  }
}

TEST_CASE("a slur does not go on over bars that are not shown", "[page][slurs]") {
  std::vector<std::string> measures(8, kQuiet);
  measures[0] = slurred("C5", slur("start")) + quarter("D5") + quarter("E5") + quarter("F5");
  const AnalysedScore music = score_of(measures);
  CHECK(slurs_of(systems_of(only_bars(music, {3, 8}))).empty());
  CHECK_FALSE(slurs_of(systems_of(music)).empty());
}

TEST_CASE("ends without beginnings and rows of beginnings draw no more than there is",
          "[page][slurs]") {
  std::string starts;
  for (int i = 0; i < 200; ++i) starts += slur("start");
  const AnalysedScore music =
      score_of({slurred("C5", slur("stop")) + slurred("D5", starts) + slurred("E5", "<slur/>") +
                slurred("F5", slur("stop") + slur("stop"))});
  const std::vector<BowInk> slurs = slurs_of(systems_of(music));
  CHECK(slurs.size() == 8);  // the most that are kept open
}

TEST_CASE("a fermata stands over its note, once", "[page][slurs]") {
  const AnalysedScore music =
      score_of({slurred("C5", "<fermata/>") + quarter("D5") + quarter("E5") +
                slurred("F5", "<fermata type=\"upright\"/>")});
  const std::vector<System> systems = systems_of(music);
  const Inks signs = of_kind(systems, InkKind::fermata);
  const std::vector<double> heads = heads_of(systems);
  REQUIRE(signs.size() == 2);
  CHECK(near((signs[0].box.left + signs[0].box.right) / 2, heads.at(0)));
  CHECK(near((signs[1].box.left + signs[1].box.right) / 2, heads.at(3)));
  for (const Ink& sign : signs) {
    for (const Ink& head : of_kind(systems, InkKind::head)) {
      const bool under =
          near((sign.box.left + sign.box.right) / 2, (head.box.left + head.box.right) / 2);
      if (under) CHECK(sign.box.bottom < head.box.top);
    }
  }
}
