#pragma once

#include "fingerturn/fraction.hpp"

#include <cstdint>
#include <vector>

/// How lengths are written as notes.
namespace fingerturn {

/// Times are counted in ticks, of which a whole note has so many that every written one is a whole
/// number of them.
using Ticks = std::int64_t;

/// What a note or rest looks like: 1/2^halvings of a whole note with dots, in a tuplet so many in
/// the time of so many.
struct NoteValue {
  std::int8_t halvings = 0;  ///< -1 a double whole note, 2 a quarter
  std::uint8_t dots = 0;
  std::uint8_t actual = 1;
  std::uint8_t normal = 1;

  [[nodiscard]] bool in_tuplet() const noexcept { return actual != normal; }
  friend bool operator==(const NoteValue&, const NoteValue&) = default;
};

/// The shortest note that is written: 1/2^7.
inline constexpr int kMostHalvings = 7;

/// How long a value is, in whole notes.
Fraction length_of(const NoteValue& value) noexcept;

/// The values that a length in whole notes is written with, longest first, tied to one another
/// where they are several; none where notes cannot say it.
///
///     values_of({3, 8})    // a dotted quarter
///     values_of({5, 8})    // a half, tied to an eighth
///     values_of({1, 12})   // an eighth, three in the time of two
std::vector<NoteValue> values_of(Fraction length);

}  // namespace fingerturn
