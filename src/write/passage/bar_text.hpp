#pragma once

#include "fingerturn/score.hpp"

#include <cstdint>
#include <deque>
#include <string>
#include <vector>

namespace fingerturn {

/// What a hand plays in one bar, in the notation, and whether a bar line closes it.
struct BarText {
  std::int32_t bar = 0;
  std::string text;
  bool closed = false;
};

/// The bars of a line in their order; the note value runs on from bar to bar. Of the signs those
/// are left out that the key says.
std::deque<BarText> bar_texts(const Line& line, const std::vector<FromBar<KeySignature>>& keys);

}  // namespace fingerturn
