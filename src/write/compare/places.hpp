#pragma once

#include "fingerturn/compare.hpp"

#include <string>

namespace fingerturn {

/// The places where the fingerings of a hand differ, bar by bar, with what lies between; empty
/// where there are none. As a table or, where that is too wide, one below another.
std::string places_text(const HandComparison& hand, const TextStyle& style);

}  // namespace fingerturn
