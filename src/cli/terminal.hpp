#pragma once

#include <cstdint>

namespace fingerturn::cli {

enum class Colour : std::uint8_t { automatic, always, never };

/// The width of the terminal that standard output goes to; 80 where it goes elsewhere.
int terminal_columns() noexcept;

/// Whether to use colour: on a terminal, unless the environment has NO_COLOR or says that the
/// terminal is dumb.
bool wants_colour(Colour colour) noexcept;

}  // namespace fingerturn::cli
