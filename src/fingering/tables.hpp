#pragma once

#include "fingering/grips.hpp"
#include "fingering/terms.hpp"

#include <cstddef>
#include <cstdint>

/// Where the numbers of the table terms stand. A situation, which nobody can choose, has a block
/// of its own, in it a number for each finger or pair of fingers; the least of a block is 0.
namespace fingerturn {

inline constexpr std::size_t kFingers = 5;
inline constexpr std::size_t kPairs = kFingers * kFingers;

/// Numbers in a row, in blocks.
struct TableBlocks {
  Term term;
  std::size_t begin = 0;
  std::size_t blocks = 0;
  std::size_t block_size = 0;

  [[nodiscard]] constexpr std::size_t end() const noexcept { return begin + blocks * block_size; }
};

inline constexpr std::size_t kIntervals = 27;  // from 13 semitones down to 13 up, further as 13
inline constexpr TableBlocks kOpeningTable{Term::opening_finger, 0, 8, kFingers};
inline constexpr TableBlocks kOverTwoTable{Term::finger_over_two, kOpeningTable.end(),
                                           kIntervals * 4, kPairs};
inline constexpr TableBlocks kChordTable{Term::finger_in_chords, kOverTwoTable.end(),
                                         kIntervals * 2, kPairs};
inline constexpr std::array kAllTables{kOpeningTable, kOverTwoTable, kChordTable};
static_assert(kChordTable.end() == kTableSize);

/// Of the only key of a grip.
std::size_t opening_entry(const Grip& grip, Finger finger) noexcept;

/// Of two keys that are left and struck.
struct EntryKeys {
  const GripKey& from;
  Finger leaves;
  const GripKey& to;
  Finger strikes;
};
std::size_t over_two_entry(const EntryKeys& keys) noexcept;
std::size_t chord_entry(const EntryKeys& keys, bool slow) noexcept;

}  // namespace fingerturn
