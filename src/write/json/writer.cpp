#include "write/json/writer.hpp"

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

void add_digits(std::string& out, std::int64_t number) {
  constexpr std::int64_t kLastDigit = 9;
  if (number >= 0 && number <= kLastDigit) {
    out += static_cast<char>('0' + number);
    return;
  }
  const fmt::format_int digits(number);
  out.append(digits.data(), digits.size());
}

}  // namespace

void JsonWriter::value(std::string_view text) {
  if (is_plain(text)) {
    value(Word{text});
  } else {
    raw(dumped(text));
  }
}

void JsonWriter::value(double number) {
  constexpr double kMostByHand = 1e12;
  if (!(std::abs(number) < kMostByHand)) return exact(number);
  comma();
  const std::int64_t hundredths = std::llround(number * 100);
  const std::int64_t size = std::abs(hundredths);
  if (hundredths < 0) out_ += '-';
  add_digits(out_, size / 100);
  out_ += '.';
  out_ += static_cast<char>('0' + size / 10 % 10);
  if (size % 10 != 0) out_ += static_cast<char>('0' + size % 10);
}

void JsonWriter::exact(double number) { raw(dumped(number)); }

void JsonWriter::value(const Fraction& fraction) {
  comma();
  out_ += '"';
  add_digits(out_, fraction.numerator);
  if (fraction.denominator != 1) {
    out_ += '/';
    add_digits(out_, fraction.denominator);
  }
  out_ += '"';
}

void JsonWriter::add_whole(std::int64_t number) {
  comma();
  add_digits(out_, number);
}

}  // namespace fingerturn
