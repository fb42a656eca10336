#include "fingering/detours.hpp"

#include <algorithm>
#include <queue>

namespace fingerturn {
namespace {

/// The place of the least of so many values; of several that of `preferred`, else the first.
template <typename Value>
std::size_t least_of(std::size_t count, std::size_t preferred, const Value& value) {
  std::size_t best = std::min(preferred, count - 1);
  std::int64_t least = value(best);
  for (std::size_t i = 0; i < count; ++i) {
    const std::int64_t here = value(i);
    if (here >= least) continue;
    least = here;
    best = i;
  }
  return best;
}

}  // namespace

Detours::Detours(const LineCosts& costs, const Remaining& remaining, const Path& easiest)
    : costs_(costs), remaining_(remaining), easiest_(easiest) {
  std::size_t size = 0;
  begins_.reserve(costs.grip_count());
  for (std::size_t grip = 0; grip < costs.grip_count(); ++grip) {
    begins_.push_back(size);
    size += count_before(grip) * costs.choice_count(grip);
  }
  spent_.resize(size);
  CostMemo memo(costs);
  for (std::size_t grip = 0; grip < costs.grip_count(); ++grip) spend(memo, grip);
}

/// Fills in what is spent up to this grip.
void Detours::spend(CostMemo& memo, std::size_t grip) {
  if (grip > 0) spend_on_steps(memo, grip);
  const std::size_t choices = costs_.choice_count(grip);
  for (std::size_t c = 0; c < choices; ++c) {
    const std::int64_t alone = costs_.alone(grip, c);
    for (std::size_t m = 0; m < count_before(grip); ++m) {
      spent_[begins_[grip] + m * choices + c] += alone;
    }
  }
}

/// What is spent before this grip and on the way to it.
void Detours::spend_on_steps(CostMemo& memo, std::size_t grip) {
  const std::size_t choices = costs_.choice_count(grip);
  const std::size_t middles = count_before(grip);
  const std::size_t firsts = count_before(grip - 1);
  const std::vector<std::int64_t>& step = memo.step(grip);
  const auto* const over_two = costs_.counts_over_two(grip) ? &memo.over_two(grip) : nullptr;
  const auto* const three = costs_.counts_three(grip) ? &memo.three(grip) : nullptr;
  const auto before = [&](std::size_t f, std::size_t m, std::size_t c) {
    std::int64_t cost = spent(grip - 1, f, m);
    if (over_two != nullptr) cost += (*over_two)[f * choices + c];
    if (three != nullptr) cost += (*three)[(f * middles + m) * choices + c];
    return cost;
  };
  for (std::size_t m = 0; m < middles; ++m) {
    for (std::size_t c = 0; c < choices; ++c) {
      std::int64_t least = before(0, m, c);
      for (std::size_t f = 1; f < firsts; ++f) least = std::min(least, before(f, m, c));
      spent_[begins_[grip] + m * choices + c] = least + step[m * choices + c];
    }
  }
}

/// The choice before a grip on the easiest path that has `choice` there.
std::size_t Detours::best_before(std::size_t grip, std::size_t choice) const {
  return least_of(count_before(grip), choice_before(easiest_, grip, 1),
                  [&](std::size_t middle) { return whole(grip, middle, choice); });
}

std::vector<Detour> Detours::at(std::size_t grip) const {
  std::vector<Detour> found;
  for (std::size_t choice = 0; choice < costs_.choice_count(grip); ++choice) {
    if (choice == easiest_.choices[grip]) continue;
    const std::int64_t harder =
        whole(grip, best_before(grip, choice), choice) - easiest_.difficulty;
    found.push_back({harder, grip, static_cast<std::uint8_t>(choice)});
  }
  std::sort(found.begin(), found.end());
  return found;
}

std::vector<Detour> Detours::easiest(std::size_t most) const {
  std::priority_queue<Detour> kept;
  for (std::size_t grip = 0; grip < costs_.grip_count(); ++grip) {
    for (const Detour& detour : at(grip)) {
      if (kept.size() >= most && !(detour < kept.top())) break;
      kept.push(detour);
      if (kept.size() > most) kept.pop();
    }
  }
  std::vector<Detour> found(kept.size());
  for (auto place = found.rbegin(); place != found.rend(); ++place) {
    *place = kept.top();
    kept.pop();
  }
  return found;
}

std::uint8_t Detours::taken(const Stretch& stretch, std::size_t grip) const noexcept {
  const bool inside = stretch.begin <= grip && grip < stretch.end();
  return inside ? stretch.choices[grip - stretch.begin] : easiest_.choices[grip];
}

/// From a grip and the choice before it back to where the easiest path is met.
void Detours::go_back(std::size_t grip, std::size_t middle, Stretch& stretch) const {
  std::vector<std::uint8_t> backward;
  while (grip > 0) {
    const std::size_t choice = backward.empty() ? stretch.choices.front() : backward.back();
    // Twice the easiest path's own choice: what leads there is the easiest path.
    if (middle == easiest_.choices[grip - 1] && choice == easiest_.choices[grip]) break;
    const std::size_t first =
        least_of(count_before(grip - 1), choice_before(easiest_, grip, 2), [&](std::size_t f) {
          return spent(grip - 1, f, middle) + costs_.added(grip, f, middle, choice);
        });
    backward.push_back(static_cast<std::uint8_t>(middle));
    --grip;
    middle = first;
  }
  stretch.begin -= backward.size();
  stretch.choices.insert(stretch.choices.begin(), backward.rbegin(), backward.rend());
}

/// From the end of a stretch on to where the easiest path is met.
void Detours::go_on(Stretch& stretch) const {
  for (std::size_t grip = stretch.end(); grip < costs_.grip_count(); ++grip) {
    const std::size_t middle = taken(stretch, grip - 1);
    const std::size_t first = grip >= 2 ? taken(stretch, grip - 2) : 0;
    if (middle == easiest_.choices[grip - 1] && (grip < 2 || first == easiest_.choices[grip - 2])) {
      return;
    }
    const std::size_t choice =
        least_of(costs_.choice_count(grip), easiest_.choices[grip], [&](std::size_t c) {
          return costs_.added(grip, first, middle, c) + remaining_.after(grip, middle, c);
        });
    stretch.choices.push_back(static_cast<std::uint8_t>(choice));
  }
}

Stretch Detours::stretch(const Detour& detour) const {
  Stretch found{detour.at, {detour.choice}};
  go_back(detour.at, best_before(detour.at, detour.choice), found);
  go_on(found);
  const auto is_easiest = [&](std::size_t grip) {
    return taken(found, grip) == easiest_.choices[grip];
  };
  while (is_easiest(found.end() - 1)) found.choices.pop_back();
  std::size_t same = 0;
  while (is_easiest(found.begin + same)) ++same;
  found.choices.erase(found.choices.begin(),
                      found.choices.begin() + static_cast<std::ptrdiff_t>(same));
  found.begin += same;
  return found;
}

}  // namespace fingerturn
