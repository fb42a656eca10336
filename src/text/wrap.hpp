#pragma once

#include <string>
#include <string_view>

namespace fingerturn {

/// Breaks a text at its blanks into lines of at most `columns` code points. The first line begins
/// with `opening`, the others are indented as far as it reaches. A word that is longer than a
/// line stands whole. Every line ends with a line feed.
std::string wrapped(std::string_view opening, std::string_view text, int columns);

/// The text with blanks behind it up to `width` code points.
std::string padded(std::string_view text, std::size_t width);

}  // namespace fingerturn
