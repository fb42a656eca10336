#include "text/numbers.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/core.h>

namespace fingerturn {

std::string beat_text(Fraction beat) {
  if (beat.denominator == 1) return std::to_string(beat.numerator);
  std::string text = fmt::format("{:.3f}", to_double(beat));
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string tempo_number(double quarters_per_minute) {
  constexpr double kHundredths = 100;
  return fmt::format("{}", std::round(quarters_per_minute * kHundredths) / kHundredths);
}

std::string tempo_not_above(double quarters_per_minute) {
  // What stands for a whole number in binary may lie a hair below it.
  constexpr double kHair = 1e-6;
  constexpr double kLeastWhole = 10;
  constexpr double kTenths = 10;
  if (quarters_per_minute >= kLeastWhole) {
    return fmt::format("{}", std::floor(quarters_per_minute + kHair));
  }
  return fmt::format("{}", std::floor(quarters_per_minute * kTenths + kHair) / kTenths);
}

std::string share_text(std::size_t part, std::size_t whole) {
  if (whole == 0) return "-";
  if (part == whole) return "100%";
  const long nearest = std::lround(100.0 * static_cast<double>(part) / static_cast<double>(whole));
  return fmt::format("{}%", part == 0 ? 0 : std::clamp(nearest, 1L, 99L));
}

}  // namespace fingerturn
