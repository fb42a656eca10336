#include "write/json/values.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace fingerturn {
namespace {

/// The replacing handler leaves the library nothing to throw about.
std::string dumped(const nlohmann::json& value) {
  constexpr int kNoIndent = -1;
  return value.dump(kNoIndent, ' ', false, nlohmann::json::error_handler_t::replace);
}

/// Whether JSON writes the text as it is. Most texts are such and are spared the way through the
/// library.
bool is_plain(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char letter) {
    return letter >= ' ' && letter <= '~' && letter != '"' && letter != '\\';
  });
}

}  // namespace

std::string json_text(std::string_view text) {
  if (!is_plain(text)) return dumped(text);
  std::string quoted;
  quoted.reserve(text.size() + 2);
  return quoted.append(1, '"').append(text).append(1, '"');
}

std::string json_number(double number) { return dumped(number); }

void add_number(std::string& out, std::int64_t number) {
  constexpr std::int64_t kLastDigit = 9;
  if (number >= 0 && number <= kLastDigit) {
    out += static_cast<char>('0' + number);
    return;
  }
  const fmt::format_int digits(number);
  out.append(digits.data(), digits.size());
}

void add_decimal(std::string& out, double number) {
  constexpr double kMostByHand = 1e12;
  if (!(std::abs(number) < kMostByHand)) {
    out += json_number(number);
    return;
  }
  const std::int64_t hundredths = std::llround(number * 100);
  const std::int64_t size = std::abs(hundredths);
  if (hundredths < 0) out += '-';
  add_number(out, size / 100);
  out += '.';
  out += static_cast<char>('0' + size / 10 % 10);
  if (size % 10 != 0) out += static_cast<char>('0' + size % 10);
}

}  // namespace fingerturn
