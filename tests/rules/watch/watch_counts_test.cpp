#include "catch.hpp"
#include "fingerturn/analysis.hpp"

namespace fingerturn {
namespace {

WatchCounts counts_of(WatchLevel level) {
  WatchCounts counts;
  counts.add(level);
  return counts;
}

TEST_CASE("a finding is counted under its level", "[rules]") {
  CHECK(counts_of(WatchLevel::info) == WatchCounts{1, 0, 0});
  CHECK(counts_of(WatchLevel::caution) == WatchCounts{0, 1, 0});
  CHECK(counts_of(WatchLevel::strain) == WatchCounts{0, 0, 1});
}

TEST_CASE("a level is reached by findings of it and graver ones", "[rules]") {
  for (const WatchLevel least : {WatchLevel::info, WatchLevel::caution, WatchLevel::strain}) {
    CHECK_FALSE(WatchCounts{}.reaches(least));
    for (const WatchLevel found : {WatchLevel::info, WatchLevel::caution, WatchLevel::strain}) {
      CHECK(counts_of(found).reaches(least) == (found >= least));
    }
  }
}

TEST_CASE("counts of findings add up level by level", "[rules]") {
  WatchCounts counts{1, 2, 3};
  counts.add(WatchCounts{10, 20, 30});
  CHECK(counts == WatchCounts{11, 22, 33});
  CHECK(counts.total() == 66);
}

}  // namespace
}  // namespace fingerturn
