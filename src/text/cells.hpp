#pragma once

#include <cstddef>
#include <string_view>

/// How wide text stands on a terminal: most letters take one cell, those of Chinese, Japanese and
/// Korean two, and marks that are set on the letter before them none. The C library tells it
/// (wcwidth), by its locale C.UTF-8 and so alike in whichever locale the program runs. On a system
/// without that locale every code point counts one.
namespace fingerturn {

/// What cannot be shown counts one, as the sign that stands for it.
std::size_t count_cells(std::string_view text) noexcept;

/// The longest beginning of a text that is no wider than this. A mark stays with its letter.
std::string_view first_cells(std::string_view text, std::size_t most) noexcept;

}  // namespace fingerturn
