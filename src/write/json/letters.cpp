#include "write/json/letters.hpp"

#include <cmath>
#include <cstdlib>

#include <nlohmann/json.hpp>

namespace fingerturn {

char* put(char* at, double number) {
  constexpr double kMostByHand = 1e12;
  constexpr std::int64_t kHundred = 100;
  if (!(std::abs(number) < kMostByHand)) return put(at, nlohmann::json(number).dump());
  const std::int64_t hundredths = std::llround(number * kHundred);
  const std::int64_t size = std::abs(hundredths);
  if (hundredths < 0) *at++ = '-';
  at = put(at, size / kHundred);
  *at++ = '.';
  *at++ = static_cast<char>('0' + size / 10 % 10);
  if (size % 10 != 0) *at++ = static_cast<char>('0' + size % 10);
  return at;
}

char* put(char* at, const Fraction& fraction) noexcept {
  *at++ = '"';
  at = put(at, fraction.numerator);
  if (fraction.denominator != 1) {
    *at++ = '/';
    at = put(at, fraction.denominator);
  }
  *at++ = '"';
  return at;
}

}  // namespace fingerturn
