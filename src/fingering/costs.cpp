#include "fingering/costs.hpp"

namespace fingerturn {

std::int64_t LineCosts::alone(std::size_t grip, std::size_t choice) const noexcept {
  Tally tally = this->tally();
  add_grip(at(grip, choice), task_.spans, tally);
  return tally.difficulty();
}

std::int64_t LineCosts::step(std::size_t grip, std::size_t before,
                             std::size_t choice) const noexcept {
  Tally tally = this->tally();
  add_step(at(grip - 1, before), at(grip, choice), task_.spans, tally);
  return tally.difficulty();
}

bool LineCosts::counts_over_two(std::size_t grip) const noexcept {
  return grip >= 2 && belong_together(task_.grips[grip - 1], task_.grips[grip]);
}

std::int64_t LineCosts::over_two(std::size_t grip, std::size_t first,
                                 std::size_t choice) const noexcept {
  Tally tally = this->tally();
  add_over_two(at(grip - 2, first), at(grip, choice), tally);
  return tally.difficulty();
}

bool LineCosts::counts_three(std::size_t grip) const noexcept {
  return counts_over_two(grip) &&
         are_single(task_.grips[grip - 2], task_.grips[grip - 1], task_.grips[grip]);
}

std::int64_t LineCosts::three(std::size_t grip, std::size_t first, std::size_t middle,
                              std::size_t choice) const noexcept {
  Tally tally = this->tally();
  add_three(at(grip - 2, first), at(grip - 1, middle), at(grip, choice), task_.spans, tally);
  return tally.difficulty();
}

std::int64_t LineCosts::added(std::size_t grip, std::size_t first, std::size_t middle,
                              std::size_t choice) const noexcept {
  std::int64_t difficulty = alone(grip, choice);
  if (grip >= 1) difficulty += step(grip, middle, choice);
  if (counts_over_two(grip)) difficulty += over_two(grip, first, choice);
  if (counts_three(grip)) difficulty += three(grip, first, middle, choice);
  return difficulty;
}

std::array<std::int32_t, kTermCount> LineCosts::amounts(std::size_t grip, std::size_t first,
                                                        std::size_t middle,
                                                        std::size_t choice) const {
  Counted counted;
  Tally tally = this->tally(&counted);
  add_grip(at(grip, choice), task_.spans, tally);
  if (grip >= 1) add_step(at(grip - 1, middle), at(grip, choice), task_.spans, tally);
  if (counts_over_two(grip)) add_over_two(at(grip - 2, first), at(grip, choice), tally);
  if (counts_three(grip)) {
    add_three(at(grip - 2, first), at(grip - 1, middle), at(grip, choice), task_.spans, tally);
  }
  return counted.amounts;
}

}  // namespace fingerturn
