#pragma once

#include "fingerturn/compare.hpp"
#include "write/text/rows.hpp"
#include "write/text/signs.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// What a comparison says of the places where fingerings differ, before it is laid out.
namespace fingerturn {

/// Blanks between columns.
inline constexpr std::size_t kGap = 2;

/// What is said of one event in one fingering: fingers, kind, way, crossing.
constexpr std::size_t kParts = 4;
using Parts = std::array<Cell, kParts>;

/// A place where the fingerings differ or, where `alike` is above 0, so many events that do not.
struct Entry {
  std::size_t alike = 0;
  std::string beat;
  std::string notes;
  std::vector<Parts> played;

  friend bool operator==(const Entry&, const Entry&) = default;
};

/// What is said of an event that differs.
Entry entry_for(const HandComparison& hand, const DifferingEvent& event, const Signs& signs);

/// Bars of which the same is to be said.
struct Block {
  BarRange bars;
  std::vector<Entry> entries;              ///< none where nothing differs
  std::optional<std::int32_t> as_in = {};  ///< the bar in which everything is the same
};

/// The bars of a hand one after another. Neighbours of which the same is to be said are one block.
std::vector<Block> blocks_of(const HandComparison& hand, const Signs& signs);

/// "3 double →": the parts that are there.
std::string way_words(const Parts& parts);
/// "3 the same": so many events of which nothing differs.
std::string alike_words(std::size_t count);
/// "the same" or "as in bar 2"; for a block without entries.
std::string whole_bar_words(const Block& block);

/// The fingerings that play an event in one way, and the way.
struct Group {
  std::string labels;
  const Parts* parts = nullptr;
};

/// The ways in which an event is played, in the order of the first fingering that has each. They
/// point into the entry.
std::vector<Group> groups_of(const Entry& entry);

}  // namespace fingerturn
