#pragma once

#include "fingerturn/fraction.hpp"

#include <charconv>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <system_error>

/// Numbers of music as they are read.
namespace fingerturn {

/// A beat as it is counted: "3", "2.5", "1.333", with at most three decimals.
std::string beat_text(Fraction beat);

/// A tempo in quarter notes a minute, to at most two decimals: "96", "72.5".
std::string tempo_number(double quarters_per_minute);

/// A tempo that is not above this one: in whole numbers from 10 on, "83"; below to one decimal.
std::string tempo_not_above(double quarters_per_minute);

/// A share in hundredths, such that only all is "100%" and only none is "0%"; "-" of nothing.
std::string share_text(std::size_t part, std::size_t whole);

/// A number that is all of a text; else none.
template <typename Number>
std::optional<Number> number_in(std::string_view text) {
  Number number{};
  const char* const end = text.data() + text.size();
  const auto [stop, problem] = std::from_chars(text.data(), end, number);
  return problem == std::errc{} && stop == end ? std::optional(number) : std::nullopt;
}

}  // namespace fingerturn
