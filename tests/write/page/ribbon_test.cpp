#include "catch.hpp"
#include "write/page/engraved.hpp"
#include "write/page/pages.hpp"
#include "write/random_score.hpp"

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

/// The ribbon of the swings: each kind of note has a shape of its own, and what is not known is not
/// drawn.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

constexpr const char* kScale = "1/8 C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C:5 ||";

std::vector<System> ribbon_of(const std::string& notation) {
  return systems_of(analysed(notation));
}

std::size_t nodes(const std::vector<System>& systems, InkStyle style) {
  return of_kind(systems, InkKind::node, style).size();
}

double middle_of(const Ink& ink) { return (ink.box.top + ink.box.bottom) / 2; }

}  // namespace

TEST_CASE("in the ribbon every kind has a shape of its own", "[page][ribbon]") {
  const AnalysedScore music =
      analysed("C4:1 D:2 E:3 F:1 G:2 | C4:1+E4:3+G4:5 C4:1 D E:3 F:4 | C4:1+E4:3 D4:2+F4:4");
  const Totals& totals = music[0][0].found().totals;
  const std::vector<System> systems = systems_of(music);
  REQUIRE(totals.double_rotations > 0);
  REQUIRE(totals.undetermined > 0);
  REQUIRE(totals.level_events == 1);
  CHECK(nodes(systems, InkStyle::filled) == totals.double_rotations);
  CHECK(nodes(systems, InkStyle::ring) == totals.double_rotations);
  CHECK(nodes(systems, InkStyle::single) == totals.single_rotations);
  CHECK(nodes(systems, InkStyle::corners) == totals.preparatory);
  CHECK(nodes(systems, InkStyle::level) == totals.level_events);
  CHECK(nodes(systems, InkStyle::open) == totals.undetermined);
}

TEST_CASE("in ribbons of scores made by chance every event has its node", "[page][ribbon]") {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    CAPTURE(seed);
    const AnalysedScore music("test.passage", random_score(seed));
    std::size_t events = 0;
    for (const AnalysedPassage passage : music) {
      for (const AnalysedLine line : passage) events += line.size();
    }
    for (const double width : {kSheetWidth, kNarrowWidth}) {
      const std::vector<System> systems = systems_of(music, width);
      const std::size_t rings = nodes(systems, InkStyle::ring);
      CHECK(of_kind(systems, InkKind::node).size() - rings == events);
      for (const System& system : systems) CHECK(system.first_bar <= system.last_bar);
    }
  }
}

TEST_CASE("a swing that prepares turns back where no note is played", "[page][ribbon]") {
  // The first note has a swing of its own.
  CHECK(of_kind(ribbon_of("C4:1 D:2 C:1 D:2"), InkKind::turn).size() == 1);
  const std::vector<System> doubles = ribbon_of("C4:1 D:2 E:3 F:4");
  CHECK(of_kind(doubles, InkKind::turn).size() == 3);
  CHECK(of_kind(doubles, InkKind::swing, InkStyle::prepare).size() == 3);
}

TEST_CASE("a held note is a flat line, and the swing comes before the next", "[page][ribbon]") {
  const std::vector<System> systems = ribbon_of("1/1 C4:1 | D:2 | C:1 |");
  const Inks swings = of_kind(systems, InkKind::swing, InkStyle::play);
  std::size_t flat = 0;
  for (const Ink& ink : swings) {
    if (std::holds_alternative<LineInk>(ink.shape)) {
      ++flat;
    } else {
      CHECK(ink.box.width() <= 3);
    }
  }
  CHECK(flat == 2);
}

TEST_CASE("a node stands on the side that is played to: right is up, for both hands",
          "[page][ribbon]") {
  const std::vector<System> right = ribbon_of("C4:1 D:2");
  const std::vector<System> left = ribbon_of("hand: left\nC4:1 B3:2");
  const auto height = [](const std::vector<System>& systems, InkStyle style) {
    return middle_of(of_kind(systems, InkKind::node, style).front());
  };
  CHECK(height(right, InkStyle::single) < height(right, InkStyle::corners));
  CHECK(height(left, InkStyle::single) > height(left, InkStyle::corners));
}

TEST_CASE("the ribbon of the right hand stands above its staff, that of the left below",
          "[page][ribbon]") {
  const std::vector<System> systems = ribbon_of("RH: 1/4 C5:1 D:2 |\nLH: 1/4 C3:1 B2:2 |");
  REQUIRE(systems.size() == 1);
  const Inks lines = of_kind(systems, InkKind::ribbon_line);
  const Inks staff = of_kind(systems, InkKind::staff_line);
  REQUIRE(lines.size() == 4);
  REQUIRE(staff.size() == 10);
  CHECK(middle_of(lines[1]) < middle_of(staff.front()));
  CHECK(middle_of(lines[2]) > middle_of(staff.back()));
}

TEST_CASE("passing fingers have a bow: below for under, above for over", "[page][ribbon]") {
  const auto bend_of = [](const std::string& notation) {
    const Inks bows = of_kind(ribbon_of(notation), InkKind::bow);
    REQUIRE(bows.size() == 1);
    return std::get<BowInk>(bows.front().shape).bend;
  };
  CHECK(of_kind(ribbon_of("C4:1 D:2 E:3"), InkKind::bow).empty());
  CHECK(bend_of("E4:3 F:1") > 0);
  CHECK(bend_of("F4:1 E:3") < 0);
  CHECK(of_kind(ribbon_of(kScale), InkKind::bow).size() == 1);
}

TEST_CASE("the arm's way is written where it is a white key or more", "[page][ribbon]") {
  CHECK(words_in(of_kind(ribbon_of("C4:1 D:2 C5:1 D:2"), InkKind::carry)) ==
        std::vector<std::string>{"→5"});
  CHECK(words_in(of_kind(ribbon_of("C5:1 D:2 C4:1 D:2"), InkKind::carry)) ==
        std::vector<std::string>{"←5"});
  CHECK(of_kind(ribbon_of("C4:1 D:2 C:1 D:2"), InkKind::carry).empty());
}

TEST_CASE("suggested fingers are slanted, missing ones a question mark", "[page][ribbon]") {
  const std::vector<System> systems = ribbon_of("C4:1? D:2? E:3? F:2? | C4:1 D");
  const auto slanted = words_in(of_kind(systems, InkKind::finger, InkStyle::suggested));
  const auto on_filled = words_in(of_kind(systems, InkKind::finger, InkStyle::suggested_on_filled));
  CHECK(slanted.size() + on_filled.size() == 4);
  CHECK(words_in(of_kind(systems, InkKind::finger, InkStyle::strong)).back() == "?");
}

TEST_CASE("what asks for care has a numbered flag, the same thing the same number",
          "[page][ribbon]") {
  const AnalysedScore music = analysed("RH: 1/4 C4:2+A4:4 r r r | C4:2+A4:4 r r r | F4:2+C#5:3 |");
  const PageWatchList list = watch_list_of(music[0]);
  REQUIRE(list.items.size() == 2);
  CHECK(list.items[0].told.bars == std::vector<std::int32_t>{1, 2});
  CHECK(bars_words(list.items[0].told.bars) == "bars 1 and 2");
  CHECK(list.items[1].told.bars == std::vector<std::int32_t>{3});
  CHECK(words_in(of_kind(systems_of(music), InkKind::watch_flag)) ==
        std::vector<std::string>{"1", "1", "2"});
}
