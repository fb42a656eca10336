#include "text/beat_text.hpp"

#include <fmt/core.h>

namespace fingerturn {

std::string beat_text(Fraction beat) {
  if (beat.denominator == 1) return std::to_string(beat.numerator);
  std::string text = fmt::format("{:.3f}", to_double(beat));
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

}  // namespace fingerturn
