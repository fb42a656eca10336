#include "fingerturn/fraction.hpp"

#include <limits>
#include <numeric>

namespace fingerturn {
namespace {

__extension__ using Wide = __int128;

Wide common_divisor(Wide left, Wide right) {
  if (left < 0) left = -left;
  while (right != 0) {
    const Wide rest = left % right;
    left = right;
    right = rest;
  }
  return left;
}

std::optional<Fraction> narrowed(Wide numerator, Wide denominator) {
  if (denominator < 0) {
    numerator = -numerator;
    denominator = -denominator;
  }
  constexpr Wide kLargest = std::numeric_limits<std::int64_t>::max();
  if (numerator > kLargest || numerator < -kLargest || denominator > kLargest) {
    const Wide divisor = common_divisor(numerator, denominator);
    numerator /= divisor;
    denominator /= divisor;
    if (numerator > kLargest || numerator < -kLargest || denominator > kLargest) {
      return std::nullopt;
    }
  }
  const auto small_numerator = static_cast<std::int64_t>(numerator);
  const auto small_denominator = static_cast<std::int64_t>(denominator);
  const std::int64_t divisor = std::gcd(small_numerator, small_denominator);
  return Fraction{small_numerator / divisor, small_denominator / divisor};
}

}  // namespace

std::strong_ordering operator<=>(const Fraction& left, const Fraction& right) noexcept {
  if (left.denominator == right.denominator) return left.numerator <=> right.numerator;
  const Wide a = Wide{left.numerator} * right.denominator;
  const Wide b = Wide{right.numerator} * left.denominator;
  if (a < b) return std::strong_ordering::less;
  if (a > b) return std::strong_ordering::greater;
  return std::strong_ordering::equal;
}

std::optional<Fraction> reduced(std::int64_t numerator, std::int64_t denominator) noexcept {
  if (denominator == 0) return std::nullopt;
  return narrowed(numerator, denominator);
}

std::optional<Fraction> sum(Fraction left, Fraction right) noexcept {
  return narrowed(
      Wide{left.numerator} * right.denominator + Wide{right.numerator} * left.denominator,
      Wide{left.denominator} * right.denominator);
}

std::optional<Fraction> product(Fraction left, Fraction right) noexcept {
  return narrowed(Wide{left.numerator} * right.numerator,
                  Wide{left.denominator} * right.denominator);
}

std::string to_string(Fraction fraction) {
  std::string text = std::to_string(fraction.numerator);
  if (fraction.denominator != 1) text += "/" + std::to_string(fraction.denominator);
  return text;
}

double to_double(Fraction fraction) noexcept {
  return static_cast<double>(fraction.numerator) / static_cast<double>(fraction.denominator);
}

}  // namespace fingerturn
