#pragma once

#include <cstdint>
#include <optional>

namespace fingerturn::cli {

enum class Colour : std::uint8_t { automatic, always, never };

/// The width of the terminal that standard output goes to; 80 where it goes elsewhere.
int terminal_columns() noexcept;

/// Whether standard output goes to a terminal.
bool writes_to_terminal() noexcept;

/// Whether standard input is what somebody types.
bool reads_from_terminal() noexcept;

/// Whether standard output goes into a pipe, at the end of which another program reads.
bool writes_to_pipe() noexcept;

/// The width of the terminal that messages go to; none where they go elsewhere, or where the
/// environment says that the terminal is dumb.
std::optional<int> message_columns() noexcept;

/// Whether to use colour: on a terminal, unless the environment has NO_COLOR or says that the
/// terminal is dumb.
bool wants_colour(Colour colour) noexcept;

}  // namespace fingerturn::cli
