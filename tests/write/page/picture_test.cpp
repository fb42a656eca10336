#include "catch.hpp"
#include "write/page/pages.hpp"
#include "write/random_score.hpp"

#include <algorithm>
#include <cstdint>
#include <set>
#include <string>
#include <vector>

/// The picture of the swing: each kind of note has a shape of its own, and what is not known is not
/// drawn.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

constexpr const char* kScale = "1/8 C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C:5 ||";

pugi::xml_document picture_of(const std::string& notation) {
  return parsed(write_svg(analysed(notation)));
}

std::vector<double> places_of(const std::vector<pugi::xml_node>& nodes) {
  std::vector<double> places;
  for (const pugi::xml_node& node : nodes) places.push_back(node.attribute("x").as_double());
  return places;
}

/// How wide the columns are, from the places of the fingers.
std::vector<double> gaps_of(const pugi::xml_document& document) {
  const std::vector<pugi::xml_node> fingers =
      all_of(document, "//*[@role='img']//*[starts-with(@class,'f')]");
  const std::vector<double> places = places_of(fingers);
  std::vector<double> gaps;
  for (std::size_t i = 1; i < places.size(); ++i) gaps.push_back(places[i] - places[i - 1]);
  return gaps;
}

std::size_t begins_of(const pugi::xml_node& path) {
  const std::string points = path.attribute("d").value();
  return static_cast<std::size_t>(std::count(points.begin(), points.end(), 'M'));
}

}  // namespace

TEST_CASE("in the picture every kind has a shape of its own") {
  const AnalysedScore music =
      analysed("C4:1 D:2 E:3 F:1 G:2 | C4:1+E4:3+G4:5 C4:1 D E:3 F:4 | C4:1+E4:3 D4:2+F4:4");
  const Totals& totals = music[0][0].found().totals;
  const pugi::xml_document document = parsed(write_svg(music));
  REQUIRE(totals.double_rotations > 0);
  REQUIRE(totals.undetermined > 0);
  REQUIRE(totals.level_events == 1);
  CHECK(drawn(document, "double").size() == totals.double_rotations);
  CHECK(drawn(document, "ring").size() == totals.double_rotations);
  CHECK(drawn(document, "single").size() == totals.single_rotations);
  CHECK(drawn(document, "prep").size() == totals.preparatory);
  CHECK(drawn(document, "level").size() == totals.level_events);
  CHECK(drawn(document, "open").size() == totals.undetermined);
}

TEST_CASE("in pictures of scores made by chance every event has its mark") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    const Score score = random_score(seed);
    const AnalysedScore music("test.passage", score);
    const pugi::xml_document document = parsed(write_svg(music));
    std::size_t events = 0;
    for (const AnalysedPassage passage : music) {
      for (const AnalysedLine line : passage) events += line.size();
    }
    std::size_t marks = 0;
    for (const char* kind : {"double", "single", "prep", "level", "open"}) {
      marks += drawn(document, kind).size();
    }
    CHECK(marks == events);
  }
}

TEST_CASE("a swing that prepares turns back where no note is played") {
  const pugi::xml_document single = picture_of("C4:1 D:2 C:1 D:2");
  CHECK(drawn(single, "turn").size() == 1);  // the first note has a swing of its own
  const pugi::xml_document doubles = picture_of("C4:1 D:2 E:3 F:4");
  CHECK(drawn(doubles, "turn").size() == 3);
  REQUIRE(drawn(doubles, "prepare").size() == 1);
  CHECK(begins_of(drawn(doubles, "prepare").front()) == 3);
  CHECK(begins_of(drawn(doubles, "play").front()) == 4);
}

TEST_CASE("the mark stands on the side that is played to: right is up, for both hands") {
  const pugi::xml_document right = picture_of("C4:1 D:2");
  const pugi::xml_document left = picture_of("hand: left\nC4:1 B3:2");
  const auto height = [](const pugi::xml_document& document, const char* kind) {
    return drawn(document, kind).front().attribute("y").as_double();
  };
  CHECK(height(right, "single") < height(right, "prep"));
  CHECK(height(left, "single") > height(left, "prep"));
}

TEST_CASE("longer notes get more room, and where values are unknown all get the same") {
  const std::vector<double> known = gaps_of(picture_of("1/8 C4:1 D:2 1/4 E:3 F:4 1/8 G:5 F:4"));
  REQUIRE(known.size() == 5);
  CHECK(known[2] > known[0]);
  const std::vector<double> unknown = gaps_of(picture_of("C4:1 D:2 1/4 E:3 F:4 1/8 G:5 F:4"));
  REQUIRE(unknown.size() == 5);
  CHECK(std::set<double>(unknown.begin(), unknown.end()).size() == 1);
}

TEST_CASE("where the way of the hand is not known, its line has a gap") {
  const auto line_of = [](const std::string& notation) {
    const pugi::xml_document document = picture_of(notation);
    const std::vector<pugi::xml_node> lines = drawn(document, "place");
    return lines.empty() ? std::size_t{0} : begins_of(lines.front());
  };
  CHECK(line_of("C4:1 D:2 C5:1 D:2") == 1);
  CHECK(line_of("C4:1 D:2 E C5:1 D:2") == 2);
  CHECK(line_of("C4:1 D:2 C:1 D:2") == 0);  // the hand stays, there is nothing to draw
}

TEST_CASE("the depth is drawn where the hand goes in") {
  CHECK(drawn(picture_of("C4:1 D:2"), "depth").empty());
  CHECK(drawn(picture_of("C#4:1 D#:2 C#:1"), "depth").size() == 1);
}

TEST_CASE("passing fingers are drawn: a bowl for under, an arch for over") {
  CHECK(drawn(picture_of(kScale), "crossing").size() >= 1);
  CHECK(drawn(picture_of("C4:1 D:2 E:3"), "crossing").empty());
  const std::string under =
      drawn(picture_of("E4:3 F:1"), "crossing").front().attribute("d").value();
  const std::string over = drawn(picture_of("F4:1 E:3"), "crossing").front().attribute("d").value();
  CHECK(under != over);
}

TEST_CASE("a gesture is one band") {
  CHECK(drawn(picture_of("C4:1 D:2 E:3"), "gesture").size() == 1);
  CHECK(drawn(picture_of("C4:1 D:2 , E:3 F:4"), "gesture").size() == 2);
}

TEST_CASE("every picture has a name and a description for screen readers") {
  const AnalysedScore music =
      analysed("passage: a\nRH: 1/4 C5:1 D:2 | E:3 F:1\nLH: 1/4 C4:1 B3:2 | A:3 G:1");
  for (const std::string& text : {write_svg(music), write_html(music)}) {
    const pugi::xml_document document = parsed(text);
    std::set<std::string> ids;
    for (const pugi::xml_node& node : all_of(document, "//*[@id]")) {
      CHECK(ids.insert(node.attribute("id").value()).second);
    }
    const std::vector<pugi::xml_node> pictures = all_of(document, "//*[@role='img']");
    REQUIRE(pictures.size() == 4);
    for (const pugi::xml_node& picture : pictures) {
      const std::string name = picture.child("title").attribute("id").value();
      const std::string description = picture.child("desc").attribute("id").value();
      CHECK(picture.attribute("aria-labelledby").value() == name + " " + description);
    }
    CHECK(text_in(pictures[0].child("title")) == "Swing of the right forearm, bar 1");
    CHECK(text_in(pictures[0].child("desc")) == "C5:1: swing right, play left. D5:2: play right.");
  }
}

TEST_CASE("repeats and double bars are drawn") {
  const auto dots = [](const std::string& notation) {
    return drawn(picture_of(notation), "dot").size();
  };
  CHECK(dots("C4:1 D:2 ||") == 0);
  CHECK(dots("|: C4:1 D:2 :|") == 4);
  const auto strokes = [](const std::string& notation) {
    return drawn(picture_of(notation), "bar").size();
  };
  CHECK(strokes("C4:1 D:2 |") == 1);
  CHECK(strokes("C4:1 D:2 ||") == 2);
}
