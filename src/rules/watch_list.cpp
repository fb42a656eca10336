#include "rules/watch_list.hpp"

#include "rules/chord_fingers.hpp"
#include "rules/missing_finger.hpp"

#include <algorithm>

namespace fingerturn {

std::vector<Finding> watch_list(const Line& line, std::span<const Strike> strikes) {
  std::vector<Finding> findings;
  for (std::size_t index = 0; index < strikes.size(); ++index) {
    const Strike& strike = strikes[index];
    if (strike.is_single_note()) continue;
    find_one_finger_twice(line, strike, index, findings);
    find_crossed_in_chord(line, strike, index, findings);
  }
  find_missing_fingers(line, strikes, findings);
  std::stable_sort(findings.begin(), findings.end(), [](const Finding& left, const Finding& right) {
    return left.index < right.index;
  });
  return findings;
}

}  // namespace fingerturn
