#include "growth/growth.hpp"

namespace fingerturn::tests {
namespace {

/// What both together take beyond what each takes.
std::int64_t beyond(std::uint64_t both, const StepsApart& apart) {
  return static_cast<std::int64_t>(both + apart.once) -
         static_cast<std::int64_t>(apart.one + apart.other);
}

}  // namespace

bool grows_in_proportion(const Steps& steps, std::size_t few) {
  // What stands twice may be wrong where it was right once.
  const std::uint64_t least = steps(2);
  return steps(8 * few) - least < 16 * (steps(few) - least);
}

bool meet_in_proportion(const StepsOfTwo& steps, const StepsApart& apart) {
  // Where each is looked at with each, that is at least a step for each pair.
  constexpr auto kEachWithEach = static_cast<std::int64_t>(kTogether * kTogether);
  const std::int64_t few = beyond(steps(kTogether, kTogether), apart);
  if (few < kEachWithEach / 2) return true;
  // Some take more together for another reason: two lists are sorted as one, or a part is read now
  // that it is for a keyboard. Four times as many then take some four times as much, and where each
  // is looked at with each, sixteen times.
  constexpr std::size_t kMany = 4 * kTogether;
  const StepsApart many_apart{apart.once, steps(kMany, 1), steps(1, kMany)};
  return beyond(steps(kMany, kMany), many_apart) < 12 * few;
}

}  // namespace fingerturn::tests
