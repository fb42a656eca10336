#pragma once

#include "fingerturn/analysis.hpp"

#include <cstddef>

namespace fingerturn {

/// The number in `counts` that is of findings of a level.
template <typename Counts>
std::size_t& count_of(Counts& counts, Level level) noexcept {
  switch (level) {
    case Level::caution:
      return counts.caution;
    case Level::strain:
      return counts.strain;
    case Level::info:
      break;
  }
  return counts.info;
}

}  // namespace fingerturn
