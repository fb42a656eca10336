#pragma once

#include <span>
#include <string_view>

namespace fingerturn {

/// The candidate that is closest to a mistyped word, empty where none is close: at most two
/// letters added, left out or changed, and fewer than half of the word.
std::string_view nearest_word(std::string_view word, std::span<const std::string_view> candidates);

}  // namespace fingerturn
