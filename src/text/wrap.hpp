#pragma once

#include <string>
#include <string_view>

namespace fingerturn {

/// Breaks a text at its blanks into lines of at most `columns` cells. The first line begins with
/// `opening`, the others are indented as far as it reaches. A word that is longer than a line is
/// broken where the line ends, between two letters, but into pieces of no less than 16 cells: where
/// there is less room than that, lines are longer. Every line ends with a line feed.
std::string wrapped(std::string_view opening, std::string_view text, int columns);

/// The text with blanks behind it up to `width` cells.
std::string padded(std::string_view text, std::size_t width);

}  // namespace fingerturn
