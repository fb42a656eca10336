#pragma once

#include <algorithm>
#include <cstddef>

namespace fingerturn {

/// The letters of the longest id in a table, of rules or of messages.
template <typename Table>
std::size_t widest_id(const Table& table) {
  std::size_t width = 0;
  for (const auto& row : table) width = std::max(width, row.id.size());
  return width;
}

}  // namespace fingerturn
