#pragma once

#include "write/text/rows.hpp"
#include "write/text/signs.hpp"

#include <array>
#include <cstdint>
#include <string_view>

/// The swing as a small drawing in text: time runs along, up is to the right, down to the left.
///
///     to right      o        2       3
///     swing         :\      /     : /
///     to left         1           o
namespace fingerturn {

/// The rows of the drawing, from top to bottom.
enum class Track : std::uint8_t { right, middle, left };
inline constexpr std::array kTracks{Track::right, Track::middle, Track::left};

std::string_view label_of(Track track) noexcept;

/// What stands in one row of the drawing for an event, at most as wide as an even column.
Cell trace_cell(Track track, const ShownEvent& shown, const Line& line, bool ascii);

/// What the signs of the drawing mean.
std::string_view trace_legend(bool ascii) noexcept;

}  // namespace fingerturn
