#pragma once

#include "fingerturn/fraction.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

/// The values of JSON that take few letters. Each is written where there is room for the most it
/// can take and says where it ends; so a member with its name and its comma is one piece of text.
namespace fingerturn {

/// A word of ours, which needs no escaping.
struct Word {
  std::string_view text;
};

inline constexpr std::size_t kMostDigits = 20;

constexpr std::size_t most_letters(Word word) noexcept { return word.text.size() + 2; }
constexpr std::size_t most_letters(std::integral auto /*number*/) noexcept { return kMostDigits; }
constexpr std::size_t most_letters(double /*number*/) noexcept { return 2 * kMostDigits; }
constexpr std::size_t most_letters(const Fraction& /*fraction*/) noexcept {
  return 2 * kMostDigits + 3;
}
template <typename Value>
requires requires(const Value& value) { most_letters(value); }
constexpr std::size_t most_letters(const std::optional<Value>& value) noexcept {
  constexpr std::size_t kNull = 4;
  return value ? std::max(kNull, most_letters(*value)) : kNull;
}

template <typename Value>
concept FewLetters = requires(const Value& value) {
  most_letters(value);
};

inline char* put(char* at, std::string_view text) noexcept {
  return std::copy(text.begin(), text.end(), at);
}
/// Letters whose count is known while compiling.
template <std::size_t Count>
char* put(char* at, const std::array<char, Count>& letters) noexcept {
  return std::copy(letters.begin(), letters.end(), at);
}
inline char* put(char* at, Word word) noexcept {
  *at = '"';
  at = put(at + 1, word.text);
  *at = '"';
  return at + 1;
}
template <std::integral Number>
char* put(char* at, Number number) noexcept {
  if constexpr (std::same_as<Number, bool>) {
    return put(at, std::string_view(number ? "true" : "false"));
  } else {
    return std::to_chars(at, at + kMostDigits, number).ptr;
  }
}
/// A number rounded to two decimals, "12.5" or "-3.0"; null where it is none.
char* put(char* at, double number);
/// "3/8", as a text.
char* put(char* at, const Fraction& fraction) noexcept;
template <typename Value>
char* put(char* at, const std::optional<Value>& value) {
  return value ? put(at, *value) : put(at, std::string_view("null"));
}

}  // namespace fingerturn
