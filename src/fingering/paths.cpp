#include "fingering/paths.hpp"

#include <algorithm>
#include <limits>

namespace fingerturn {
namespace {

constexpr std::int64_t kNone = std::numeric_limits<std::int64_t>::max();

std::size_t before(const Path& path, std::size_t grip, std::size_t back) noexcept {
  return grip >= back ? path.choices[grip - back] : 0;
}

}  // namespace

Remaining::Remaining(const LineCosts& costs) {
  const std::size_t grips = costs.grip_count();
  counts_.reserve(grips);
  begins_.reserve(grips);
  std::size_t size = 0;
  for (std::size_t grip = 0; grip < grips; ++grip) {
    counts_.push_back(costs.choice_count(grip));
    begins_.push_back(size);
    size += count_before(grip) * counts_[grip];
  }
  least_.resize(size);
  CostMemo memo(costs);
  for (std::size_t grip = grips; grip-- > 1;) weigh(costs, memo, grip);
}

/// Fills in what remains after the grip before this one.
void Remaining::weigh(const LineCosts& costs, CostMemo& memo, std::size_t grip) {
  const std::size_t choices = counts_[grip];
  const std::size_t middles = counts_[grip - 1];
  const std::size_t firsts = count_before(grip - 1);
  std::vector<std::int64_t> from_middle = memo.step(grip);
  for (std::size_t c = 0; c < choices; ++c) {
    const std::int64_t alone = costs.alone(grip, c);
    for (std::size_t m = 0; m < middles; ++m) {
      from_middle[m * choices + c] += alone + after(grip, m, c);
    }
  }
  const bool over_two = costs.counts_over_two(grip);
  const bool three = costs.counts_three(grip);
  const std::int64_t* const from_first = over_two ? memo.over_two(grip).data() : nullptr;
  const std::int64_t* from_both = three ? memo.three(grip).data() : nullptr;
  for (std::size_t f = 0; f < firsts; ++f) {
    for (std::size_t m = 0; m < middles; ++m) {
      std::int64_t least = kNone;
      for (std::size_t c = 0; c < choices; ++c) {
        std::int64_t cost = from_middle[m * choices + c];
        if (over_two) cost += from_first[f * choices + c];
        if (three) cost += *from_both++;
        least = std::min(least, cost);
      }
      least_[begins_[grip - 1] + f * middles + m] = least;
    }
  }
}

/// Completes a path from a grip on, the easiest way, and adds up what it costs.
void EasiestPaths::go_on(Path& path, std::size_t from) const {
  for (std::size_t grip = from; grip < costs_.grip_count(); ++grip) {
    const std::size_t middle = before(path, grip, 1);
    std::int64_t least = kNone;
    std::uint8_t easiest = 0;
    std::int64_t paid = 0;
    for (std::size_t choice = 0; choice < costs_.choice_count(grip); ++choice) {
      const std::int64_t added = costs_.added(grip, before(path, grip, 2), middle, choice);
      const std::int64_t whole = added + remaining_.after(grip, middle, choice);
      if (whole >= least) continue;
      least = whole;
      easiest = static_cast<std::uint8_t>(choice);
      paid = added;
    }
    path.choices.push_back(easiest);
    path.difficulty += paid;
  }
}

Path EasiestPaths::first() const {
  Path path;
  path.choices.reserve(costs_.grip_count());
  go_on(path, 0);
  return path;
}

/// Remembers the ways to leave a path that was given, at `from` or later.
void EasiestPaths::add_detours(std::size_t of, std::size_t from, std::size_t kept) {
  const Path& path = given_[of];
  std::int64_t paid = 0;
  for (std::size_t grip = 0; grip < costs_.grip_count(); ++grip) {
    const std::size_t first = before(path, grip, 2);
    const std::size_t middle = before(path, grip, 1);
    for (std::size_t choice = 0; grip >= from && choice < costs_.choice_count(grip); ++choice) {
      if (choice == path.choices[grip]) continue;
      const std::int64_t whole =
          paid + costs_.added(grip, first, middle, choice) + remaining_.after(grip, middle, choice);
      if (detours_.size() >= kept && whole > detours_.rbegin()->difficulty) continue;
      detours_.insert({whole, of, grip, static_cast<std::uint8_t>(choice)});
      if (detours_.size() > kept) detours_.erase(std::prev(detours_.end()));
    }
    paid += costs_.added(grip, first, middle, path.choices[grip]);
  }
}

Path EasiestPaths::next(std::size_t kept) {
  if (given_.empty()) {
    given_.push_back(first());
    add_detours(0, 0, kept);
    return given_.back();
  }
  if (detours_.empty()) return {};
  const Detour detour = *detours_.begin();
  detours_.erase(detours_.begin());
  const Path& left = given_[detour.of];
  Path path;
  path.choices.reserve(costs_.grip_count());
  for (std::size_t grip = 0; grip < detour.at; ++grip) {
    path.difficulty +=
        costs_.added(grip, before(left, grip, 2), before(left, grip, 1), left.choices[grip]);
    path.choices.push_back(left.choices[grip]);
  }
  path.difficulty += costs_.added(detour.at, before(left, detour.at, 2), before(left, detour.at, 1),
                                  detour.choice);
  path.choices.push_back(detour.choice);
  go_on(path, detour.at + 1);
  given_.push_back(std::move(path));
  add_detours(given_.size() - 1, detour.at + 1, kept);
  return given_.back();
}

}  // namespace fingerturn
