#include "views/practice/minutes.hpp"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <numeric>
#include <utility>
#include <vector>

namespace fingerturn {
namespace {

constexpr int kLeastMinutes = 3;
constexpr int kWorkMinutes = 20;
constexpr int kRestMinutes = 2;

/// No rest stands at the end.
int rest_in(int minutes) { return (minutes - 1) / (kWorkMinutes + kRestMinutes) * kRestMinutes; }

double points_of(const PlannedPlace& place) {
  return static_cast<double>(std::max<std::size_t>(place.stretch.asks.points, 1));
}

/// Each its least, and of what is left whole minutes in proportion to its points; those that are
/// left over go to the places that ask most, one to each.
std::vector<int> shares(const std::vector<PlannedPlace>& places, int minutes) {
  const double points =
      std::transform_reduce(places.begin(), places.end(), 0.0, std::plus<>(), points_of);
  const int to_share = minutes - kLeastMinutes * static_cast<int>(places.size());
  std::vector<int> shared;
  int left = to_share;
  for (const PlannedPlace& place : places) {
    const int more = static_cast<int>(to_share * points_of(place) / points);
    shared.push_back(kLeastMinutes + more);
    left -= more;
  }
  for (std::size_t i = 0; left > 0 && i < shared.size(); ++i, --left) ++shared[i];
  return shared;
}

}  // namespace

void share_minutes(PracticePlan& plan, int minutes) {
  plan.minutes = minutes;
  plan.rest_minutes = rest_in(minutes);
  const int work = minutes - plan.rest_minutes;
  const auto room = static_cast<std::size_t>(std::max(1, work / kLeastMinutes));
  while (plan.places.size() > room) {
    plan.left_out.insert(plan.left_out.begin(), std::move(plan.places.back()));
    plan.places.pop_back();
  }
  const std::vector<int> shared =
      work < kLeastMinutes ? std::vector<int>(plan.places.size(), work) : shares(plan.places, work);
  for (std::size_t i = 0; i < plan.places.size(); ++i) plan.places[i].minutes = shared[i];
}

}  // namespace fingerturn
