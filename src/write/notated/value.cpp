#include "write/notated/value.hpp"

#include <bit>
#include <numeric>
#include <optional>

namespace fingerturn {
namespace {

constexpr std::int64_t kUnitsInWhole = std::int64_t{1} << (kMostHalvings + 2);
constexpr std::int64_t kMostInTuplet = 15;
constexpr std::uint8_t kMostDots = 2;

/// How many of the shortest units, of which a whole note has kUnitsInWhole.
std::int64_t units_of(int halvings, int dots) {
  const std::int64_t plain = 2 * kUnitsInWhole >> (halvings + 1);
  return 2 * plain - (plain >> dots);
}

/// What a length has that is no power of two in its denominator.
std::int64_t odd_part(std::int64_t denominator) {
  return denominator >> std::countr_zero(static_cast<std::uint64_t>(denominator));
}

/// The longest value that fits into so many units; none where they are less than the shortest.
std::optional<NoteValue> longest_within(std::int64_t units) {
  for (int halvings = -1; halvings <= kMostHalvings; ++halvings) {
    for (int dots = kMostDots; dots >= 0; --dots) {
      if (units_of(halvings, dots) > units || halvings + dots > kMostHalvings + 1) continue;
      return NoteValue{static_cast<std::int8_t>(halvings), static_cast<std::uint8_t>(dots)};
    }
  }
  return std::nullopt;
}

}  // namespace

Fraction length_of(const NoteValue& value) noexcept {
  const std::int64_t units = units_of(value.halvings, value.dots) * value.normal;
  return reduced(units, kUnitsInWhole * value.actual).value_or(Fraction{});
}

std::vector<NoteValue> values_of(Fraction length) {
  const std::int64_t actual = odd_part(length.denominator);
  if (length.numerator <= 0 || actual > kMostInTuplet) return {};
  const auto normal = static_cast<std::int64_t>(std::bit_floor(static_cast<std::uint64_t>(actual)));
  const std::optional<Fraction> written = product(length, {actual, normal});
  if (!written || kUnitsInWhole % written->denominator != 0) return {};
  if (written->numerator > kMostInTuplet * kUnitsInWhole) return {};
  std::int64_t units = written->numerator * (kUnitsInWhole / written->denominator);
  std::vector<NoteValue> values;
  while (units > 0) {
    const std::optional<NoteValue> value = longest_within(units);
    if (!value) return {};
    units -= units_of(value->halvings, value->dots);
    values.push_back(*value);
    values.back().actual = static_cast<std::uint8_t>(actual);
    values.back().normal = static_cast<std::uint8_t>(normal);
  }
  return values;
}

}  // namespace fingerturn
