#include "catch.hpp"
#include "fingerturn/read.hpp"
#include "write/musicxml/marking.hpp"

#include <string>
#include <string_view>
#include <vector>

/// What a score says beside its notes (MusicXML 4.0: dynamics, wedge, fermata, ending).
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

const std::string kBar = quarter("C5") + quarter("D5") + quarter("E5") + quarter("F5");

std::string direction(const std::string& type, int staff = 1) {
  return "<direction><direction-type>" + type + "</direction-type><staff>" + std::to_string(staff) +
         "</staff></direction>";
}
std::string dynamics(const std::string& mark) { return "<dynamics><" + mark + "/></dynamics>"; }
std::string wedge(const std::string& type, int number = 1) {
  return "<wedge type=\"" + type + "\" number=\"" + std::to_string(number) + "\"/>";
}
std::string ending(const std::string& type, const std::string& numbers, const std::string& text) {
  return "<barline><ending type=\"" + type + "\" number=\"" + numbers + "\">" + text +
         "</ending></barline>";
}

Passage passage_of(std::vector<std::string> bars) {
  bars.front().insert(0,
                      "<attributes><divisions>1</divisions><staves>2</staves><time><beats>4</beats>"
                      "<beat-type>4</beat-type></time></attributes>");
  const ReadResult read = read_musicxml(Source("score.musicxml", partwise(bars)));
  REQUIRE(read.ok());
  return read.score.passages.at(0);
}

}  // namespace

TEST_CASE("dynamics are read where they stand, with their staff", "[musicxml][signs]") {
  const ScoreSigns signs =
      passage_of({quarter("C5") + direction(dynamics("mf")) + quarter("D5") +
                      direction(dynamics("pp"), 2) + quarter("E5") + quarter("F5"),
                  quarter("C5", "<notations>" + dynamics("sfz") + "</notations>") + quarter("D5") +
                      quarter("E5") + quarter("F5")})
          .signs;
  REQUIRE(signs.dynamics.size() == 3);
  CHECK(signs.dynamics[0].letters == "mf");
  CHECK(signs.dynamics[0].at == BarMoment{1, {1, 4}});
  CHECK(signs.dynamics[0].hand == Hand::right);
  CHECK(signs.dynamics[1].letters == "pp");
  CHECK(signs.dynamics[1].at == BarMoment{1, {1, 2}});
  CHECK(signs.dynamics[1].hand == Hand::left);
  CHECK(signs.dynamics[2].letters == "sfz");
  CHECK(signs.dynamics[2].at == BarMoment{2});
}

TEST_CASE("dynamics that the trade has no letters for are passed over", "[musicxml][signs]") {
  const auto other = [](const std::string& text) {
    return direction("<dynamics><other-dynamics>" + text + "</other-dynamics></dynamics>");
  };
  const ScoreSigns signs = passage_of({other("fffz") + other("loud") + other("") +
                                       other("ppppppp") + direction(dynamics("n")) + kBar})
                               .signs;
  REQUIRE(signs.dynamics.size() == 1);
  CHECK(signs.dynamics[0].letters == "fffz");
}

TEST_CASE("a hairpin goes from its beginning to its end, by its number", "[musicxml][signs]") {
  const ScoreSigns signs = passage_of({direction(wedge("crescendo")) + quarter("C5") +
                                           direction(wedge("diminuendo", 2), 2) + quarter("D5") +
                                           quarter("E5") + direction(wedge("stop")) + quarter("F5"),
                                       quarter("C5") + direction(wedge("stop", 2)) + quarter("D5") +
                                           quarter("E5") + quarter("F5")})
                               .signs;
  REQUIRE(signs.hairpins.size() == 2);
  CHECK(signs.hairpins[0].louder);
  CHECK(signs.hairpins[0].from == BarMoment{1});
  CHECK(signs.hairpins[0].to == BarMoment{1, {3, 4}});
  CHECK_FALSE(signs.hairpins[1].louder);
  CHECK(signs.hairpins[1].from == BarMoment{1, {1, 4}});
  CHECK(signs.hairpins[1].to == BarMoment{2, {1, 4}});
  CHECK(signs.hairpins[1].hand == Hand::left);
}

TEST_CASE("hairpins without an end, a beginning or a length are none", "[musicxml][signs]") {
  const ScoreSigns signs =
      passage_of({direction(wedge("stop")) + direction(wedge("crescendo")) +
                  direction(wedge("stop")) + direction(wedge("crescendo", 99)) +
                  direction(wedge("crescendo")) + kBar + direction(wedge("stop", 99))})
          .signs;
  CHECK(signs.hairpins.empty());
}

TEST_CASE("a fermata over a rest is kept with its moment, that of a note is the note's",
          "[musicxml][signs]") {
  const std::string rest =
      "<note><rest/><duration>1</duration><notations><fermata/></notations></note>";
  const Passage passage = passage_of(
      {quarter("C5", "<notations><fermata/></notations>") + quarter("D5") + rest + rest});
  REQUIRE(passage.signs.rest_fermatas.size() == 2);
  CHECK(passage.signs.rest_fermatas[0].at == BarMoment{1, {1, 2}});
  CHECK(passage.lines.at(0).events.at(0).notes.at(0).fermata);
}

TEST_CASE("endings have their bars, their numbers and how they close", "[musicxml][signs]") {
  const std::vector<RepeatEnding> endings =
      passage_of({kBar, ending("start", "1", "") + kBar, kBar + ending("stop", "1", ""),
                  ending("start", "2, 3", "2. 3.") + kBar + ending("discontinue", "2, 3", "")})
          .signs.endings;
  REQUIRE(endings.size() == 2);
  CHECK(endings[0].first_bar == 2);
  CHECK(endings[0].last_bar == 3);
  CHECK(endings[0].numbers == "1.");
  CHECK_FALSE(endings[0].is_open);
  CHECK(endings[1].first_bar == 4);
  CHECK(endings[1].last_bar == 4);
  CHECK(endings[1].numbers == "2. 3.");
  CHECK(endings[1].is_open);
}

TEST_CASE("endings that have no end, or share a bar, are not kept", "[musicxml][signs]") {
  const std::vector<RepeatEnding> endings =
      passage_of({ending("start", "1", "") + kBar + ending("stop", "1", "") +
                      ending("start", "2", "") + ending("stop", "2", ""),
                  ending("start", "3", "") + kBar, ending("start", "4", "") + kBar})
          .signs.endings;
  REQUIRE(endings.size() == 1);
  CHECK(endings[0].numbers == "1.");
}

TEST_CASE("what goes on beyond the bars that are taken ends with them", "[musicxml][signs]") {
  const Passage whole = passage_of({direction(wedge("crescendo")) + direction(dynamics("p")) + kBar,
                                    ending("start", "1", "") + kBar,
                                    direction(dynamics("f")) + kBar + direction(wedge("stop")),
                                    kBar + ending("stop", "1", "")});
  const ScoreSigns middle = only_bars(whole, {3, 3}).signs;
  REQUIRE(middle.dynamics.size() == 1);
  CHECK(middle.dynamics[0].letters == "f");
  CHECK(middle.hairpins.size() == 1);
  REQUIRE(middle.endings.size() == 1);
  CHECK(middle.endings[0].first_bar == 3);
  CHECK(middle.endings[0].last_bar == 3);
  CHECK(middle.endings[0].is_open);
  const ScoreSigns last = only_bars(whole, {4, 4}).signs;
  CHECK(last.hairpins.empty());
  CHECK(last.dynamics.empty());
  REQUIRE(last.endings.size() == 1);
  CHECK_FALSE(last.endings[0].is_open);
  const ScoreSigns first = only_bars(whole, {1, 1}).signs;
  CHECK(first.hairpins.size() == 1);
  CHECK(first.endings.empty());
}

TEST_CASE("signs take no part in comparisons", "[musicxml][signs]") {
  CHECK(passage_of({direction(dynamics("p")) + kBar}) == passage_of({kBar}));
}
