#include "fingering/tables.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

std::size_t pair_of(const EntryKeys& keys) noexcept {
  return (keys.leaves - std::size_t{1}) * kFingers + (keys.strikes - std::size_t{1});
}

std::size_t interval_of(const EntryKeys& keys) noexcept {
  constexpr std::int32_t kFurthest = 13;
  const std::int32_t semitones = keys.to.across - keys.from.across;
  return static_cast<std::size_t>(std::clamp(semitones, -kFurthest, kFurthest) + kFurthest);
}

std::size_t entry(const TableBlocks& table, std::size_t block, std::size_t in_block) noexcept {
  return table.begin + block * table.block_size + in_block;
}

}  // namespace

std::size_t opening_entry(const Grip& grip, Finger finger) noexcept {
  const auto onward = static_cast<std::size_t>(grip.onward);
  return entry(kOpeningTable, onward * 2 + (grip.keys[0].black ? 1 : 0), finger - std::size_t{1});
}

std::size_t over_two_entry(const EntryKeys& keys) noexcept {
  const std::size_t colours = (keys.from.black ? 2U : 0U) + (keys.to.black ? 1U : 0U);
  return entry(kOverTwoTable, interval_of(keys) * 4 + colours, pair_of(keys));
}

std::size_t chord_entry(const EntryKeys& keys, bool slow) noexcept {
  return entry(kChordTable, interval_of(keys) * 2 + (slow ? 1 : 0), pair_of(keys));
}

}  // namespace fingerturn
