#include "hand/least_travel.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>

namespace fingerturn {
namespace {

/// What it costs to have come to each place: the way so far, each quarter of a key `way`, and the
/// distances from home, each quarter 1. As a function of the place it is made of straight lines and
/// bends upward only; it is kept as its bends, by how much it grows steeper at each.
class Costs {
 public:
  Costs(int lowest, int highest, std::int64_t way)
      : lowest_(lowest),
        way_(way),
        bends_(static_cast<std::size_t>(highest - lowest) + 1),
        first_(lowest),
        last_(lowest) {}

  /// The hand is at this place.
  void begin_at(int place) {
    first_ = last_ = place;
    bend(place) = 2 * way_;
  }
  /// The hand may be anywhere from `low` to `high`, at no cost.
  void begin_within(int low, int high) {
    first_ = low;
    last_ = high;
    bend(low) += way_;
    bend(high) += way_;
  }

  /// The next strike, to which the hand may come from any place.
  void add(const Allowed& allowed) {
    for (const int home : {allowed.home_low, allowed.home_high}) {
      const int bent = std::clamp(home, allowed.low, allowed.high);
      first_ = std::min(first_, bent);
      last_ = std::max(last_, bent);
      bend(bent) += 2;
    }
    cut_below(allowed.low);
    cut_above(allowed.high);
  }

  /// Who leaves a place below `first` does better to go to `first` before, and from above `last`
  /// to `last`; between them it is best to have stayed.
  [[nodiscard]] int first() const noexcept { return first_; }
  [[nodiscard]] int last() const noexcept { return last_; }

  /// The lowest of the places that cost least.
  [[nodiscard]] int best() const {
    std::int64_t slope = -way_;
    int place = first_;
    for (; place < last_; ++place) {
      slope += bends_[static_cast<std::size_t>(place - lowest_)];
      if (slope >= 0) break;
    }
    return place;
  }

 private:
  std::int64_t& bend(int place) { return bends_[static_cast<std::size_t>(place - lowest_)]; }

  /// Nothing below `low` is allowed, and no place costs more than to go there from another: below
  /// the first bend the slope is again that of the way.
  void cut_below(int low) {
    std::int64_t slope = -way_ - kHomes;
    while (first_ < low || slope + bend(first_) < -way_) {
      slope += bend(first_);
      bend(first_++) = 0;
    }
    last_ = std::max(last_, first_);
    bend(first_) += slope + way_;
  }
  void cut_above(int high) {
    std::int64_t slope = way_ + kHomes;
    while (last_ > high || slope - bend(last_) > way_) {
      slope -= bend(last_);
      bend(last_--) = 0;
    }
    first_ = std::min(first_, last_);
    bend(last_) += way_ - slope;
  }

  static constexpr std::int64_t kHomes = 2;  ///< distances that each strike adds

  int lowest_;
  std::int64_t way_;
  std::vector<std::int64_t> bends_;  ///< by place, from `lowest_` on
  int first_;                        ///< of the places that have bends
  int last_;
};

/// The places of all strikes, and where the hand is before them.
struct Range {
  int low = 0;
  int high = 0;
};

std::optional<Range> range_of(std::span<const Allowed> strikes, std::optional<int> from) {
  std::optional<Range> range;
  if (from) range = {*from, *from};
  for (const Allowed& allowed : strikes) {
    if (!allowed.known) continue;
    if (!range) range = {allowed.low, allowed.high};
    range->low = std::min(range->low, allowed.low);
    range->high = std::max(range->high, allowed.high);
  }
  return range;
}

/// So much that no way is worth any distances from home.
std::int64_t cost_of_way(std::size_t strikes, const Range& range) {
  return 2 * static_cast<std::int64_t>(strikes + 1) * (range.high - range.low + 2);
}

}  // namespace

void narrow(Allowed& allowed, int low, int high, int home) noexcept {
  allowed.low = allowed.known ? std::max(allowed.low, low) : low;
  allowed.high = allowed.known ? std::min(allowed.high, high) : high;
  allowed.home_low = allowed.known ? std::min(allowed.home_low, home) : home;
  allowed.home_high = allowed.known ? std::max(allowed.home_high, home) : home;
  allowed.known = true;
}

void close_gap(Allowed& allowed) noexcept {
  if (allowed.low <= allowed.high) return;
  allowed.low = allowed.high = (allowed.low + allowed.high) / 2;
}

std::vector<int> least_travel(std::span<const Allowed> strikes, std::optional<int> from) {
  std::vector<int> path(strikes.size(), from.value_or(0));
  const std::optional<Range> range = range_of(strikes, from);
  if (!range) return path;
  Costs costs(range->low, range->high, cost_of_way(strikes.size(), *range));
  if (from) {
    costs.begin_at(*from);
  } else {
    costs.begin_within(range->low, range->high);
  }
  std::vector<Range> best_before(strikes.size());
  for (std::size_t i = 0; i < strikes.size(); ++i) {
    if (strikes[i].known) costs.add(strikes[i]);
    best_before[i] = {costs.first(), costs.last()};
  }
  int place = costs.best();
  for (std::size_t i = strikes.size(); i-- > 0;) {
    place = std::clamp(place, best_before[i].low, best_before[i].high);
    path[i] = place;
  }
  return path;
}

}  // namespace fingerturn
