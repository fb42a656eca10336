#include "rules/arm/arc.hpp"

namespace fingerturn {

std::vector<std::size_t> arcs(std::span<const std::optional<double>> carries, std::size_t first) {
  std::vector<std::size_t> numbers(carries.size(), first);
  double way = 0;  // the last move of the arc; none yet is 0
  // The way to the place where an arc opens after a rest belongs to no arc.
  for (std::size_t i = 1; i < carries.size(); ++i) {
    const double carry = carries[i].value_or(0);
    const bool reverses = carry * way < 0;
    numbers[i] = numbers[i - 1] + (reverses ? 1 : 0);
    if (carry != 0) way = carry;
  }
  return numbers;
}

}  // namespace fingerturn
