#pragma once

#include "fingerturn/source.hpp"

#include <cstddef>

namespace fingerturn {

/// Tells the places of offsets that never go back. Each is counted on from the one before, since
/// a source may be one long line.
class PlaceCounter {
 public:
  explicit PlaceCounter(const Source& source) : source_(source) {}

  Place at(std::size_t offset);

 private:
  const Source& source_;
  bool begun_ = false;
  std::size_t offset_ = 0;
  Place place_;
};

}  // namespace fingerturn
