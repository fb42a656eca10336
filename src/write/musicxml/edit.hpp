#pragma once

#include "fingerturn/source.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace fingerturn {

/// A text to be put into another.
struct Insertion {
  std::uint32_t at = 0;
  std::string text;
};

/// The text with the insertions, which are in its order, and without the marks of an earlier run.
std::string edited(std::string_view original, const std::vector<Span>& own_marks,
                   const std::vector<Insertion>& insertions);

}  // namespace fingerturn
