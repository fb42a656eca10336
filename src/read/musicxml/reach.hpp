#pragma once

#include "hand/spans.hpp"

#include <algorithm>

/// What a hand can strike at once.
namespace fingerturn {

/// What fingers 1 and 5 span in practice, in semitones.
inline constexpr int kPracticalSpan = 15;

/// The lowest and the highest of some keys.
struct Keys {
  int lowest = kNobodysSpan * kNobodysSpan;
  int highest = 0;

  void add(int key) {
    lowest = std::min(lowest, key);
    highest = std::max(highest, key);
  }
  [[nodiscard]] int span() const { return std::max(highest - lowest, 0); }
  [[nodiscard]] bool none() const { return highest < lowest; }
};

}  // namespace fingerturn
