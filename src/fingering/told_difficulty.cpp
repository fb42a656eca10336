#include "fingering/told_difficulty.hpp"

#include <algorithm>
#include <cstddef>

namespace fingerturn {
namespace {

/// What asks more of one stroke is one leap or one stretch, however far.
constexpr double kMostAsked = 6;

/// Whether the hand strikes again what it has just struck, with the same fingers.
bool comes_at_once_again(const Fingered& before, const Fingered& now) noexcept {
  const Grip& grip = now.grip;
  if (grip.opens || grip.count != before.grip.count || grip.struck_count != grip.count)
    return false;
  for (std::size_t i = 0; i < grip.count; ++i) {
    if (grip.keys.at(i).across != before.grip.keys.at(i).across) return false;
    if (now.choice.strikes.at(i) != before.choice.leaves.at(i)) return false;
  }
  return true;
}

}  // namespace

double told_difficulty(const LineCosts& costs, const Path& path) {
  const auto choice = [&path](std::size_t grip, std::size_t back) {
    return choice_before(path, grip, back);
  };
  double sum = 0;
  std::size_t strokes = 0;
  for (std::size_t at = 0; at < path.choices.size(); ++at) {
    const Grip& grip = costs.grip(at);
    if (grip.struck_count == 0) continue;
    ++strokes;
    double asked = grip.struck_count;
    const bool stays =
        at > 0 && comes_at_once_again(costs.at(at - 1, choice(at, 1)), costs.at(at, choice(at, 0)));
    if (!stays) {
      const auto added = costs.added(at, choice(at, 2), choice(at, 1), choice(at, 0));
      asked += std::min(kMostAsked, static_cast<double>(added) / kDifficultyUnit);
    }
    sum += asked / grip.quarters_since;
  }
  return strokes == 0 ? 0 : sum / static_cast<double>(strokes);
}

}  // namespace fingerturn
