#include "fingering/paths.hpp"

#include <algorithm>
#include <limits>

namespace fingerturn {
namespace {

constexpr std::int64_t kNone = std::numeric_limits<std::int64_t>::max();

}  // namespace

std::size_t choice_before(const Path& path, std::size_t grip, std::size_t back) noexcept {
  return grip >= back ? path.choices[grip - back] : 0;
}

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

Path easiest_path(const LineCosts& costs, const Remaining& remaining) {
  Path path;
  path.choices.reserve(costs.grip_count());
  for (std::size_t grip = 0; grip < costs.grip_count(); ++grip) {
    const std::size_t first = choice_before(path, grip, 2);
    const std::size_t middle = choice_before(path, grip, 1);
    std::int64_t least = kNone;
    std::uint8_t easiest = 0;
    std::int64_t paid = 0;
    for (std::size_t choice = 0; choice < costs.choice_count(grip); ++choice) {
      const std::int64_t added = costs.added(grip, first, middle, choice);
      const std::int64_t whole = added + remaining.after(grip, middle, choice);
      if (whole >= least) continue;
      least = whole;
      easiest = static_cast<std::uint8_t>(choice);
      paid = added;
    }
    path.choices.push_back(easiest);
    path.difficulty += paid;
  }
  return path;
}

}  // namespace fingerturn
