#pragma once

#include "write/page/swing_picture.hpp"

#include <string>

/// What stands around the pictures of a hand.
namespace fingerturn {

/// Adds the bar line that ends a piece and the repeat sign that begins it, where there are such.
void add_bar_lines(std::string& out, const HandPicture& picture, const PageLayout& layout,
                   const Piece& piece);

/// The names of the lanes, right-aligned at `x`.
void add_lane_names(std::string& out, const HandPicture& picture, double x);

}  // namespace fingerturn
