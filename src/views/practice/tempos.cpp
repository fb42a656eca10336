#include "views/practice/tempos.hpp"

#include <algorithm>
#include <cmath>

namespace fingerturn {

std::vector<TempoStep> full_swing_steps(double full_swing_tempo, std::optional<double> goal) {
  constexpr int kSteps = 4;
  constexpr double kHalf = 2;
  const double top = std::min(full_swing_tempo, goal.value_or(full_swing_tempo));
  std::vector<TempoStep> steps;
  for (int left = kSteps; left > 0; --left) {
    steps.push_back({top / std::pow(kHalf, static_cast<double>(left) / kSteps), 1});
  }
  steps.push_back({top, 1});
  return steps;
}

std::vector<TempoStep> smaller_swing_steps(double full_swing_tempo, std::optional<double> goal) {
  constexpr double kWidestRatio = 1.15;
  constexpr double kMostSteps = 8;
  std::vector<TempoStep> steps;
  if (!goal || *goal <= full_swing_tempo) return steps;
  const double ratio = *goal / full_swing_tempo;
  const double count =
      std::clamp(std::ceil(std::log(ratio) / std::log(kWidestRatio)), 1.0, kMostSteps);
  for (double step = 1; step < count; ++step) {
    const double faster = std::pow(ratio, step / count);
    steps.push_back({full_swing_tempo * faster, 1 / faster});
  }
  steps.push_back({*goal, 1 / ratio});
  return steps;
}

}  // namespace fingerturn
