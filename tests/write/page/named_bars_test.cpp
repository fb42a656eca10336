#include "catch.hpp"
#include "write/page/engraved.hpp"
#include "write/page/pages.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <variant>
#include <vector>

/// Bars that come again, named on the page instead of drawn, and the rows of keys with fingers.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

const std::string kA = " 1/8 C5:1 D:2 E:3 F:4 G:5 F:4 E:3 D:2 |";
const std::string kB = " 1/8 E5:3 C5:1 G5:5 E:3 D:2 F:4 E:3 D:2 |";
const std::string kC = " 1/4 C5:1 G5:5 C5:1 G5:5 |";

AnalysedScore named(const std::string& bars) {
  return with_repeats_named(analysed("meter: 4/4\nRH:" + bars));
}

std::vector<std::string> names_in(const std::vector<System>& systems) {
  return words_in(of_kind(systems, InkKind::words));
}

std::vector<System> with_keys(const AnalysedScore& music) {
  const WatchNumbersOfLines none(music[0].size());
  SystemMaker maker(music[0], lines_of(music[0]), none, kSheetWidth, {.keys = true});
  std::vector<System> systems;
  while (std::optional<System> system = maker.next()) systems.push_back(std::move(*system));
  return systems;
}

std::size_t plates_in(const std::vector<System>& systems, InkStyle style) {
  return of_kind(systems, InkKind::key, style).size();
}

}  // namespace

TEST_CASE("named bars stand in the place of their notes", "[page][repeats]") {
  const AnalysedScore music = named(kC + kA + kB + kC + kA + kB + kC);
  for (const double width : {kSheetWidth, kNarrowWidth}) {
    const std::vector<System> systems = systems_of(music, width);
    CHECK(names_in(systems) == std::vector<std::string>{"5–7 as 2–4"});
    CHECK(of_kind(systems, InkKind::head).size() == 4 + 8 + 8 + 4);
    CHECK(systems.back().last_bar == 7);
  }
}

TEST_CASE("the forearm's way does not go through named bars", "[page][repeats]") {
  const std::vector<System> systems = systems_of(named(kC + kA + kB + kC + kA + kB + kB));
  std::size_t names = 0;
  for (const System& system : systems) {
    const Inks words = of_kind({system}, InkKind::words);
    names += words.size();
    for (const Ink& ink : of_kind({system}, InkKind::swing)) {
      for (const Ink& name : words) {
        CHECK((ink.box.right < name.box.left || ink.box.left > name.box.right));
      }
    }
  }
  CHECK(names == 1);
}

TEST_CASE("named bars cover nothing in a system that ends or begins with them", "[page][repeats]") {
  const std::vector<System> systems =
      systems_of(named(kC + kA + kB + kC + kA + kB + kC + kA + kB + kC + kA + kB), kNarrowWidth);
  const Inks names = of_kind(systems, InkKind::words);
  CHECK(names.size() == 3);
  for (const Ink& name : names) CHECK(name.box.right < kNarrowWidth);
}

TEST_CASE("keys stand where a hand takes its first place, with its fingers", "[page][keys]") {
  const std::vector<System> systems = with_keys(analysed("RH: 1/4 D5:1 E:2 F#:3 G:4 A:5 |"));
  CHECK(words_in(of_kind(systems, InkKind::key)) ==
        std::vector<std::string>{"1", "2", "4", "5", "3"});
  CHECK(plates_in(systems, InkStyle::white_key) == 5);
  CHECK(plates_in(systems, InkStyle::black_key) == 3);
  CHECK(plates_in(systems_of(analysed("1/4 D5:1 E:2 |")), InkStyle::white_key) == 0);
}

TEST_CASE("keys stand again after a far move, and not where the place is told", "[page][keys]") {
  const std::string place = " 1/8 C4:1 D:2 E:3 F:4 G:5 F:4 E:3 D:2 |";
  const std::string far = " 1/8 C6:1 D:2 E:3 F:4 G:5 F:4 E:3 D:2 |";
  CHECK(plates_in(with_keys(analysed("RH:" + place + place)), InkStyle::white_key) == 5);
  CHECK(plates_in(with_keys(analysed("RH:" + place + far)), InkStyle::white_key) == 10);
}

TEST_CASE("a row of keys ends where a finger takes another key", "[page][keys]") {
  const std::vector<System> systems = with_keys(analysed("RH: 1/8 C4:1 D:2 E:3 F:1 G:2 |"));
  CHECK(words_in(of_kind(systems, InkKind::key)) == std::vector<std::string>{"1", "2", "3"});
}

TEST_CASE("a row that begins or ends on a black key goes on to the white one", "[page][keys]") {
  const std::vector<System> systems = with_keys(analysed("LH: 1/8 Eb3:4 F:3 G:2 Ab:1 |"));
  CHECK(plates_in(systems, InkStyle::white_key) == 5);  // D to A
  CHECK(plates_in(systems, InkStyle::black_key) == 3);
  const Box keys = box_of(of_kind(systems, InkKind::key));
  CHECK(keys.top > box_of(of_kind(systems, InkKind::node)).bottom);
}

TEST_CASE("rows of keys lie apart and within the page", "[page][keys]") {
  std::string jumps = "RH:";
  for (int i = 0; i < 8; ++i) jumps += " 1/8 C4:1 E:3 C6:1 E:3 C4:1 E:3 C6:1 E:3 |";
  for (const System& system : with_keys(analysed(jumps))) {
    std::vector<Box> rows;
    for (const Ink& ink : system.inks) {
      if (ink.kind != InkKind::key || ink.style != InkStyle::white_key) continue;
      if (!rows.empty() && ink.box.left < rows.back().right + 0.01) {
        rows.back() = both(rows.back(), ink.box);
      } else {
        rows.push_back(ink.box);
      }
      CHECK(ink.box.right < kSheetWidth + 0.01);
      CHECK(ink.box.top >= 0);
    }
    CHECK(rows.size() > 1);
    for (std::size_t i = 1; i < rows.size(); ++i) CHECK(rows[i].left > rows[i - 1].right + 0.5);
  }
}

TEST_CASE("sheets have the size of their paper and their music the width between its margins",
          "[page]") {
  struct Size {
    Paper paper;
    const char* width;
  };
  std::string bars = "RH:";
  for (int i = 0; i < 90; ++i) bars += kA;
  const AnalysedScore music = analysed(bars);
  for (const Size& size :
       {Size{Paper::a4, "210.0mm"}, Size{Paper::a4_landscape, "297.0mm"},
        Size{Paper::letter, "215.9mm"}, Size{Paper::letter_landscape, "279.4mm"}}) {
    CAPTURE(size.width);
    const std::string picture = write_svg(music, {.paper = size.paper});
    CHECK(picture.find("width=\"" + std::string(size.width) + "\"") != std::string::npos);
  }
  CHECK(write_svg(music) == write_svg(music, {.paper = Paper::a4}));
}
