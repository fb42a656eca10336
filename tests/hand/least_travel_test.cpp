#include "hand/least_travel.hpp"

#include "catch.hpp"
#include "rules/arm/carry.hpp"
#include "rules/arm/depth.hpp"
#include "rules/random_passage.hpp"
#include "rules/strike.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <limits>
#include <optional>
#include <vector>

/// The path of least travel against a slow search that tries every place of a fine grid.
namespace fingerturn {
namespace {

constexpr int kPassages = 120;
constexpr std::size_t kEvents = 60;

/// The least travel there is: for every place of every strike, the least that leads to it. All
/// places are quarters, and the best path turns at ends of what is allowed, so no finer grid can
/// do better.
long least_by_search(const std::vector<Allowed>& strikes) {
  int lowest = 0;
  int highest = 0;
  for (const Allowed& allowed : strikes) {
    lowest = std::min(lowest, allowed.low);
    highest = std::max(highest, allowed.high);
  }
  constexpr long kNever = std::numeric_limits<long>::max() / 2;
  std::vector<long> costs(static_cast<std::size_t>(highest - lowest + 1), 0);
  const auto forbid_outside = [&](int low, int high) {
    for (int place = lowest; place <= highest; ++place) {
      if (place < low || place > high) costs[static_cast<std::size_t>(place - lowest)] = kNever;
    }
  };
  for (const Allowed& allowed : strikes) {
    // From each place to its neighbours, in both directions.
    for (std::size_t i = 1; i < costs.size(); ++i) costs[i] = std::min(costs[i], costs[i - 1] + 1);
    for (std::size_t i = costs.size(); i-- > 1;) {
      costs[i - 1] = std::min(costs[i - 1], costs[i] + 1);
    }
    if (allowed.known) forbid_outside(allowed.low, allowed.high);
  }
  return *std::min_element(costs.begin(), costs.end());
}

std::optional<std::size_t> first_known(const std::vector<Allowed>& strikes) {
  for (std::size_t i = 0; i < strikes.size(); ++i) {
    if (strikes[i].known) return i;
  }
  return std::nullopt;
}

long travel_of(const std::vector<int>& path, std::size_t from) {
  long travel = 0;
  for (std::size_t i = from + 1; i < path.size(); ++i) travel += std::abs(path[i] - path[i - 1]);
  return travel;
}

void check_path(const std::vector<Allowed>& strikes, bool free_start) {
  const std::vector<int> path = least_travel(strikes);
  REQUIRE(path.size() == strikes.size());
  const std::optional<std::size_t> first = first_known(strikes);
  if (!first) return;
  for (std::size_t i = 0; i < path.size(); ++i) {
    if (strikes[i].known) REQUIRE((path[i] >= strikes[i].low && path[i] <= strikes[i].high));
    if (strikes[i].known || i <= *first) continue;
    const bool like_next = i + 1 == path.size() || path[i] == path[i + 1];
    REQUIRE((path[i] == path[i - 1] || like_next));
  }
  std::vector<Allowed> played(strikes.begin() + static_cast<std::ptrdiff_t>(*first), strikes.end());
  if (!free_start) played.front().low = played.front().high = path[*first];
  REQUIRE(travel_of(path, *first) == least_by_search(played));
}

template <typename Check>
void for_lines_by_chance(const Check& check) {
  for_random_lines(kPassages, kEvents, check);
}

std::vector<Allowed> without_rests(std::vector<Allowed> strikes) {
  for (Allowed& allowed : strikes) allowed.opens = false;
  return strikes;
}

TEST_CASE("no path travels less than the one that is taken, for carry and for depth",
          "[rules][arm]") {
  for_lines_by_chance([](const Line& line) {
    const std::vector<Strike> strikes = strikes_of(line);
    check_path(without_rests(places_of_hand(line, strikes)), true);
    check_path(without_rests(depths_of_hand(line, strikes)), true);
  });
}

TEST_CASE("over rests no path from the same first place travels less", "[rules][arm]") {
  for_lines_by_chance([](const Line& line) {
    const std::vector<Strike> strikes = strikes_of(line);
    check_path(places_of_hand(line, strikes), false);
    check_path(depths_of_hand(line, strikes), false);
  });
}

/// The fewest places by which the hand can serve all strikes, by trying every division.
std::size_t fewest_stays(const std::vector<Allowed>& strikes) {
  std::vector<std::size_t> fewest(strikes.size() + 1, strikes.size());
  fewest[0] = 0;
  for (std::size_t end = 1; end <= strikes.size(); ++end) {
    int low = std::numeric_limits<int>::min();
    int high = std::numeric_limits<int>::max();
    for (std::size_t begin = end; begin-- > 0;) {
      if (strikes[begin].known) {
        low = std::max(low, strikes[begin].low);
        high = std::min(high, strikes[begin].high);
      }
      if (low > high) break;
      fewest[end] = std::min(fewest[end], fewest[begin] + 1);
    }
  }
  return fewest.back();
}

TEST_CASE("no path moves less often", "[rules][arm]") {
  for_lines_by_chance([](const Line& line) {
    const std::vector<Allowed> strikes = without_rests(places_of_hand(line, strikes_of(line)));
    const std::vector<int> path = least_travel(strikes);
    const std::optional<std::size_t> first = first_known(strikes);
    if (!first) return;
    std::size_t stays = 1;
    for (std::size_t i = *first + 1; i < path.size(); ++i) {
      if (path[i] != path[i - 1]) ++stays;
    }
    REQUIRE(stays == fewest_stays(strikes));
  });
}

TEST_CASE("paths that can be seen at a glance", "[rules][arm]") {
  const auto path_of = [](std::vector<Allowed> strikes) { return least_travel(strikes); };
  using Path = std::vector<int>;
  CHECK(path_of({}) == Path{});
  CHECK(path_of({{true, false, 0, 8, 4}}) == Path{4});
  CHECK(path_of({{}, {true, false, 0, 8, 4}}) == Path{4, 4});
  // It begins where it has least far to go.
  CHECK(path_of({{true, false, 0, 8, 4}, {true, false, 10, 18, 14}}) == Path{8, 10});
  CHECK(path_of({{true, false, 0, 8, 4}, {true, false, -9, -1, -5}}) == Path{0, -1});
  // It goes at once as far as it must go soon.
  CHECK(path_of({{true, false, 0, 8, 4}, {true, false, 10, 18, 14}, {true, false, 12, 20, 16}}) ==
        Path{8, 12, 12});
  // After a rest nothing is known yet of what follows before it.
  CHECK(path_of({{true, false, 0, 8, 4}, {true, true, 10, 18, 14}}) == Path{4, 10});
}

}  // namespace
}  // namespace fingerturn
