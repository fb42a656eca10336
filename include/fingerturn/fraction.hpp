#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>

namespace fingerturn {

/// An exact fraction in lowest terms with a denominator above zero. In the score it counts
/// whole notes: a quarter is 1/4, a triplet eighth 1/12.
///
///     reduced(6, 48);                        // 1/8
///     sum({1, 8}, {1, 12});                  // 5/24
///     to_string({1, 8});                     // "1/8"; whole numbers have no stroke: "2"
struct Fraction {
  std::int64_t numerator = 0;
  std::int64_t denominator = 1;

  friend bool operator==(const Fraction&, const Fraction&) = default;
};

std::strong_ordering operator<=>(const Fraction& left, const Fraction& right) noexcept;

/// The fraction in lowest terms; nothing for a zero denominator or what 64 bits cannot hold.
std::optional<Fraction> reduced(std::int64_t numerator, std::int64_t denominator) noexcept;

/// Sum and product; nothing where 64 bits cannot hold the result.
std::optional<Fraction> sum(Fraction left, Fraction right) noexcept;
std::optional<Fraction> product(Fraction left, Fraction right) noexcept;

std::string to_string(Fraction fraction);
double to_double(Fraction fraction) noexcept;

}  // namespace fingerturn
