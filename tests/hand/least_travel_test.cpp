#include "hand/least_travel.hpp"

#include "catch.hpp"
#include "rules/arm/carry.hpp"
#include "rules/arm/depth.hpp"
#include "rules/random_passage.hpp"
#include "rules/strike.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdlib>
#include <limits>
#include <optional>
#include <tuple>
#include <vector>

/// The path of least travel that keeps nearest to home, against a slow search over all places.
namespace fingerturn {
namespace {

constexpr int kPassages = 60;
constexpr std::size_t kEvents = 40;

/// What a path costs: the way first, then the distances from home.
struct Cost {
  long way = 0;
  long from_home = 0;

  friend bool operator==(const Cost&, const Cost&) = default;
  friend bool operator<(const Cost& left, const Cost& right) {
    return left.way != right.way ? left.way < right.way : left.from_home < right.from_home;
  }
};

long from_home(const Allowed& allowed, int place) {
  return std::abs(place - allowed.home_low) + std::abs(place - allowed.home_high);
}

/// The least that any path costs, by trying for each strike every place after every other. All
/// places are whole quarters; no finer grid can do better, since the costs bend at whole ones.
Cost least_by_search(const std::vector<Allowed>& strikes, std::optional<int> from) {
  constexpr long kNever = std::numeric_limits<long>::max() / 4;
  int lowest = from.value_or(0);
  int highest = lowest;
  for (const Allowed& allowed : strikes) {
    lowest = std::min(lowest, allowed.low);
    highest = std::max(highest, allowed.high);
  }
  const auto count = static_cast<std::size_t>(highest - lowest) + 1;
  std::vector<Cost> costs(count);
  if (from) {
    std::fill(costs.begin(), costs.end(), Cost{kNever, 0});
    costs[static_cast<std::size_t>(*from - lowest)] = {};
  }
  for (const Allowed& allowed : strikes) {
    std::vector<Cost> next(count, Cost{kNever, 0});
    for (std::size_t to = 0; to < count; ++to) {
      const int place = lowest + static_cast<int>(to);
      if (allowed.known && (place < allowed.low || place > allowed.high)) continue;
      for (std::size_t at = 0; at < count; ++at) {
        const long way = costs[at].way + std::labs(static_cast<long>(to) - static_cast<long>(at));
        const long home = costs[at].from_home + (allowed.known ? from_home(allowed, place) : 0);
        next[to] = std::min(next[to], Cost{way, home});
      }
    }
    costs = std::move(next);
  }
  return *std::min_element(costs.begin(), costs.end());
}

Cost cost_of(const std::vector<Allowed>& strikes, const std::vector<int>& path,
             std::optional<int> from) {
  Cost cost;
  int before = from.value_or(path.front());
  for (std::size_t i = 0; i < path.size(); ++i) {
    cost.way += std::abs(path[i] - before);
    if (strikes[i].known) cost.from_home += from_home(strikes[i], path[i]);
    before = path[i];
  }
  return cost;
}

void check_path(const std::vector<Allowed>& strikes, std::optional<int> from) {
  const std::vector<int> path = least_travel(strikes, from);
  REQUIRE(path.size() == strikes.size());
  if (path.empty()) return;
  for (std::size_t i = 0; i < path.size(); ++i) {
    if (strikes[i].known) REQUIRE((path[i] >= strikes[i].low && path[i] <= strikes[i].high));
  }
  const Cost found = cost_of(strikes, path, from);
  const Cost least = least_by_search(strikes, from);
  CAPTURE(found.way, least.way, found.from_home, least.from_home);
  REQUIRE(found == least);
}

template <typename Check>
void for_lines_by_chance(const Check& check) {
  for_random_lines(kPassages, kEvents, check);
}

TEST_CASE("no path travels less or, travelling as little, keeps nearer to home", "[rules][arm]") {
  for (const std::optional<int> from : {std::optional<int>(), std::optional<int>(80)}) {
    for_lines_by_chance([&](const Line& line) {
      const std::vector<Strike> strikes = strikes_of(line);
      check_path(places_of_hand(line, strikes, std::nullopt), from);
      check_path(places_of_hand(line, strikes, 9), from);
      check_path(depths_of_hand(line, strikes), from);
    });
  }
}

TEST_CASE("with a finger missing the hand is where a neighbour has it", "[rules][arm]") {
  for_lines_by_chance([](const Line& line) {
    const std::vector<Allowed> strikes = places_of_hand(line, strikes_of(line), std::nullopt);
    const std::vector<int> path = least_travel(strikes);
    for (std::size_t i = 1; i + 1 < path.size(); ++i) {
      if (strikes[i].known) continue;
      REQUIRE((path[i] == path[i - 1] || path[i] == path[i + 1]));
    }
  });
}

TEST_CASE("paths that can be seen at a glance", "[rules][arm]") {
  const auto path_of = [](std::vector<Allowed> strikes, std::optional<int> from = std::nullopt) {
    return least_travel(strikes, from);
  };
  using Path = std::vector<int>;
  CHECK(path_of({}) == Path{});
  CHECK(path_of({{}}) == Path{0});
  CHECK(path_of({{}}, 7) == Path{7});
  CHECK(path_of({{true, 0, 8, 4, 4}}) == Path{4});
  CHECK(path_of({{}, {true, 0, 8, 4, 4}}) == Path{4, 4});
  // Between two homes every place is as good; the lower is taken.
  CHECK(path_of({{true, 0, 8, 3, 6}}) == Path{3});
  // It begins where it has least far to go.
  CHECK(path_of({{true, 0, 8, 4, 4}, {true, 10, 18, 14, 14}}) == Path{8, 10});
  CHECK(path_of({{true, 0, 8, 4, 4}, {true, -9, -1, -5, -5}}) == Path{0, -1});
  // On its way it lies where the fingers are at home.
  CHECK(path_of({{true, 0, 8, 4, 4}, {true, 10, 18, 14, 14}, {true, 20, 28, 24, 24}}) ==
        Path{8, 14, 20});
  // Whence it comes counts as well.
  CHECK(path_of({{true, 0, 8, 4, 4}}, 20) == Path{8});
  CHECK(path_of({{true, 0, 8, 4, 4}}, 5) == Path{5});
}

}  // namespace
}  // namespace fingerturn
