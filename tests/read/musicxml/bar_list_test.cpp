#include "read/musicxml/bar_list.hpp"

#include "catch.hpp"

#include <cstdint>
#include <string>
#include <vector>

using namespace fingerturn;

TEST_CASE("bars in words") {
  struct Case {
    std::vector<std::int32_t> bars;
    std::string words;
  };
  const std::vector<Case> cases{
      {{3}, "bar 3"},
      {{3, 3}, "bar 3"},
      {{4, 3}, "bars 3 and 4"},
      {{3, 4, 5}, "bars 3 to 5"},
      {{3, 4, 6}, "bars 3, 4 and 6"},
      {{12, 0, 3, 5, 6, 7, 3}, "bars 0, 3, 5 to 7 and 12"},
      {{1, 3, 5, 7, 9, 11, 13, 15}, "bars 1, 3, 5, 7, 9, 11, 13 and 15"},
      {{1, 3, 5, 7, 9, 11, 13, 15, 17}, "bars 1, 3, 5, 7, 9, 11, 13, 15 and 1 more"},
      {{1, 2, 3, 5, 7, 9, 11, 13, 15, 17, 20, 21},
       "bars 1 to 3, 5, 7, 9, 11, 13, 15, 17 and 2 more"},
  };
  for (const Case& each : cases) {
    CAPTURE(each.words);
    CHECK(bar_list(each.bars) == each.words);
  }
}
