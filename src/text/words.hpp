#pragma once

#include <span>
#include <string>
#include <string_view>

/// Words that somebody typed, against those that are known.
namespace fingerturn {

/// The text with the letters A to Z in lower case.
std::string lower_case(std::string_view text);

/// The candidate that is closest to a mistyped word, empty where none is close: at most two
/// letters added, left out or changed, and fewer than half of the word.
std::string_view nearest_word(std::string_view word, std::span<const std::string_view> candidates);

}  // namespace fingerturn
