#include "hand/least_travel.hpp"

#include <algorithm>
#include <cstddef>

namespace fingerturn {
namespace {

/// Strikes that one place serves, from `begin` up to but not including `end`.
struct Stay {
  std::size_t end = 0;
  Allowed places;           ///< those that serve them all; not known where all fingers are missing
  bool meets_rest = false;  ///< it ends because a rest follows, or the line ends
};

Stay stay_from(std::span<const Allowed> strikes, std::size_t begin) noexcept {
  Stay stay{begin, {}, true};
  for (; stay.end < strikes.size(); ++stay.end) {
    const Allowed& next = strikes[stay.end];
    if (next.opens && stay.end > begin) return stay;
    if (!next.known) continue;
    if (!stay.places.known) {
      stay.places = next;
      continue;
    }
    const int low = std::max(stay.places.low, next.low);
    const int high = std::min(stay.places.high, next.high);
    if (low > high) {
      stay.meets_rest = false;
      return stay;
    }
    stay.places.low = low;
    stay.places.high = high;
  }
  return stay;
}

/// The place among those of the stay from which it is least far to what follows.
int first_place(const Stay& stay, std::span<const Allowed> strikes) noexcept {
  const Allowed& places = stay.places;
  if (stay.meets_rest) return std::clamp(places.unmoved, places.low, places.high);
  return strikes[stay.end].low > places.high ? places.high : places.low;
}

}  // namespace

void narrow(Allowed& allowed, int low, int high) noexcept {
  allowed.low = allowed.known ? std::max(allowed.low, low) : low;
  allowed.high = allowed.known ? std::min(allowed.high, high) : high;
  allowed.known = true;
}

void close_gap(Allowed& allowed) noexcept {
  if (allowed.low <= allowed.high) return;
  allowed.low = allowed.high = (allowed.low + allowed.high) / 2;
}

std::vector<int> least_travel(std::span<const Allowed> strikes, std::optional<int> from) {
  std::vector<int> path(strikes.size());
  std::optional<int> place = from;
  for (std::size_t begin = 0; begin < strikes.size();) {
    const Stay stay = stay_from(strikes, begin);
    if (stay.places.known) {
      place = place ? std::clamp(*place, stay.places.low, stay.places.high)
                    : first_place(stay, strikes);
    }
    std::fill(path.begin() + static_cast<std::ptrdiff_t>(begin),
              path.begin() + static_cast<std::ptrdiff_t>(stay.end), place.value_or(0));
    begin = stay.end;
  }
  return path;
}

}  // namespace fingerturn
