#include "catch.hpp"
#include "write/page/pages.hpp"

#include <string>
#include <vector>

/// Which bars come again as earlier ones were.
using namespace fingerturn;

namespace {

using Again = std::vector<BarsAgain>;

const std::string kA = " 1/8 C5:1 D:2 E:3 F:4 G:5 F:4 E:3 D:2 |";
const std::string kB = " 1/8 E5:3 C5:1 G5:5 E:3 D:2 F:4 E:3 D:2 |";
const std::string kC = " 1/4 C5:1 G5:5 C5:1 G5:5 |";
const std::string kHead = "meter: 4/4\n";

Again again_in(const std::string& bars) {
  return with_repeats_named(fingerturn::tests::analysed(kHead + bars))[0].found().again;
}

}  // namespace

TEST_CASE("bars that come again are named by the first that are alike", "[repeats]") {
  CHECK(again_in(kC + kA + kB + kC + kA + kB + kC) == Again{{{5, 7}, {2, 4}}});
  CHECK(again_in(kC + kA + kB + kC + kB + kC + kA + kB) == Again{{{7, 8}, {2, 3}}});
}

TEST_CASE("one bar alone is drawn again", "[repeats]") {
  CHECK(again_in(kC + kA + kB + kA + kC).empty());
}

TEST_CASE("bars are alike only with their rhythm, fingers and turns", "[repeats]") {
  const std::string rhythm = " 1/4 C5:1 D:2 E:3 F:4 | G:5 F:4 E:3 D:2 |";
  const std::string quick = " 1/8 C5:1 D:2 E:3 F:4 | G:5 F:4 E:3 D:2 |";
  CHECK(again_in(kC + rhythm + kC + rhythm) == Again{{{5, 6}, {2, 3}}});
  CHECK(again_in(kC + rhythm + kC + quick).empty());
  const std::string finger = " 1/4 C5:1 D:2 E:3 F:4 | G:5 F:4 E:3 D:3 |";
  CHECK(again_in(kC + rhythm + kC + finger).empty());
  // From another key the arm comes from elsewhere.
  const std::string far = " 1/4 C6:1 C6:1 C6:1 C6:1 |";
  CHECK(again_in(kC + kA + kB + far + kA + kB).empty());
}

TEST_CASE("both hands must come again", "[repeats]") {
  const std::string right = "RH:" + kC + kA + kB + kC + kA + kB;
  const std::string same = "\nLH: 1/1 C3:5 | G3:1 | C3:5 | C3:5 | G3:1 | C3:5 |";
  const std::string other = "\nLH: 1/1 C3:5 | G3:1 | C3:5 | C3:5 | G3:1 | D3:5 |";
  CHECK(again_in(right + same).size() == 1);
  CHECK(again_in(right + other).empty());
}

TEST_CASE("bars with a sign beside their notes are drawn", "[repeats]") {
  CHECK(again_in(kC + kA + kB + kC + kA + "\nnote: loose\n" + kB).empty());
  CHECK(again_in(kC + kA + kB + kC + kA + kB + ":").empty());
  CHECK(again_in(kC + kA + kB + kC + "\nkey: G major\n" + kA + kB).empty());
}

TEST_CASE("what bars repeat is itself drawn, however often it comes", "[repeats]") {
  std::string bars = kC;
  for (int i = 0; i < 50; ++i) bars += kA + kB;
  const Again again = again_in(bars);
  REQUIRE_FALSE(again.empty());
  for (const BarsAgain& each : again) {
    CHECK(each.as.last - each.as.first == each.bars.last - each.bars.first);
    CHECK(each.as.last < each.bars.first);
    for (const BarsAgain& other : again) CHECK_FALSE(other.bars.contains(each.as.first));
  }
}

TEST_CASE("bars that are named are not shown, and only among those that are", "[repeats]") {
  const AnalysedScore whole = fingerturn::tests::analysed(kHead + kC + kA + kB + kC + kA + kB);
  const PassageAnalysis named = with_repeats_named(whole)[0].found();
  CHECK(named.shows(4));
  CHECK_FALSE(named.shows(5));
  CHECK_FALSE(named.shows(6));
  CHECK(with_repeats_named(only_bars(whole, {4, 6}))[0].found().again.empty());
}
