#include "catch.hpp"
#include "fingerturn/read.hpp"
#include "score/file_reading.hpp"
#include "write/page/engraved.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

/// Dynamics, hairpins, fermatas over rests and endings on the page. The score is invented.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

AnalysedScore music(BarRange bars = {1, 7}) {
  const std::string path =
      std::string(FINGERTURN_TESTS_DIR) + "/write/page/music/with_signs.musicxml";
  const ReadResult read = read_musicxml(Source(path, text_of_file(path)));
  REQUIRE(read.ok());
  return AnalysedScore(path, only_bars(read.score, bars));
}

AnalysedScore one_hand(Hand hand) {
  const std::string path =
      std::string(FINGERTURN_TESTS_DIR) + "/write/page/music/with_signs.musicxml";
  const ReadResult read = read_musicxml(Source(path, text_of_file(path)));
  REQUIRE(read.ok());
  return AnalysedScore(path, only_hand(read.score, hand));
}

/// How many lines a hairpin has is two, so many hairpins.
std::size_t hairpins_in(const std::vector<System>& systems) {
  return of_kind(systems, InkKind::hairpin).size() / 2;
}

double opening(const Inks& lines, std::size_t hairpin, bool at_end) {
  const auto& upper = std::get<LineInk>(lines.at(2 * hairpin).shape);
  const auto& lower = std::get<LineInk>(lines.at(2 * hairpin + 1).shape);
  return at_end ? lower.to.y - upper.to.y : lower.from.y - upper.from.y;
}

/// The tops of the staves of a system, the upper first.
std::vector<double> tops_of_staves(const System& system) {
  std::vector<double> lines;
  for (const Ink& ink : system.inks) {
    if (ink.kind == InkKind::staff_line) lines.push_back(std::get<LineInk>(ink.shape).from.y);
  }
  std::ranges::sort(lines);
  std::vector<double> tops;
  for (std::size_t i = 0; i < lines.size(); i += 5) tops.push_back(lines[i]);
  return tops;
}

}  // namespace

TEST_CASE("every letter of a dynamic is drawn, between the staves", "[page][signs]") {
  const std::vector<System> systems = systems_of(music());
  CHECK(of_kind(systems, InkKind::dynamic).size() == 1 + 2 + 2 + 3 + 1 + 4 + 1 + 2);
  for (const System& system : systems) {
    const std::vector<double> tops = tops_of_staves(system);
    REQUIRE(tops.size() == 2);
    for (const Ink& ink : system.inks) {
      if (ink.kind != InkKind::dynamic && ink.kind != InkKind::hairpin) continue;
      CHECK(ink.box.top > tops[0] + 4);
      CHECK(ink.box.bottom < tops[1]);
    }
  }
}

TEST_CASE("a hand alone shows what stands at both staves, on the side without a ribbon",
          "[page][signs]") {
  for (const Hand hand : {Hand::right, Hand::left}) {
    const std::vector<System> systems = systems_of(one_hand(hand));
    CHECK(of_kind(systems, InkKind::dynamic).size() == 16);
    for (const System& system : systems) {
      const double top = tops_of_staves(system).at(0);
      for (const Ink& ink : system.inks) {
        if (ink.kind == InkKind::dynamic) CHECK((ink.box.top > top + 2) == (hand == Hand::right));
      }
    }
  }
}

TEST_CASE("a hairpin opens when it grows louder and closes when softer", "[page][signs]") {
  const std::vector<System> systems = systems_of(music({1, 2}));
  const Inks lines = of_kind(systems, InkKind::hairpin);
  REQUIRE(lines.size() == 4);
  CHECK(opening(lines, 0, false) < 0.1);
  CHECK(opening(lines, 0, true) > 1);
  CHECK(opening(lines, 1, false) > 1);
  CHECK(opening(lines, 1, true) < 0.1);
}

TEST_CASE("a hairpin is parted where its system ends", "[page][signs]") {
  const AnalysedScore score = music({5, 6});
  CHECK(hairpins_in(systems_of(score)) == 1);
  const std::vector<System> narrow = systems_of(score, kNarrowWidth);
  REQUIRE(narrow.size() == 2);
  const Inks lines = of_kind(narrow, InkKind::hairpin);
  REQUIRE(lines.size() == 4);
  CHECK(opening(lines, 0, false) < 0.1);
  CHECK(opening(lines, 0, true) == Approx(opening(lines, 1, false)));
  CHECK(opening(lines, 1, true) > 1);
}

TEST_CASE("a fermata stands over its rest", "[page][signs]") {
  const std::vector<System> systems = systems_of(music({4, 4}));
  const Inks fermatas = of_kind(systems, InkKind::fermata);
  const Inks rests = of_kind(systems, InkKind::rest);
  REQUIRE(fermatas.size() == 1);
  REQUIRE(rests.size() == 1);
  CHECK(fermatas[0].box.left < rests[0].box.right);
  CHECK(fermatas[0].box.right > rests[0].box.left);
  CHECK(fermatas[0].box.bottom < rests[0].box.top);
}

TEST_CASE("endings stand over their bars, clear of the ribbon", "[page][signs]") {
  const std::vector<System> systems = systems_of(music({5, 6}));
  const Inks ending = of_kind(systems, InkKind::ending);
  CHECK(words_in(ending) == std::vector<std::string>{"1.", "2."});
  CHECK(ending.size() == 2 + 3 + 2);  // the second is open
  const double highest_node = box_of(of_kind(systems, InkKind::node)).top;
  for (const Ink& ink : ending) CHECK(ink.box.bottom < highest_node);
}

TEST_CASE("an ending that goes on over systems is numbered once", "[page][signs]") {
  Score score = music().written();
  score.passages.at(0).signs.endings = {{2, 6, "1.", false}};
  const AnalysedScore changed("score", score);
  const std::vector<System> systems = systems_of(changed, kNarrowWidth);
  REQUIRE(systems.size() > 2);
  const Inks ending = of_kind(systems, InkKind::ending);
  CHECK(words_in(ending) == std::vector<std::string>{"1."});
}
