#pragma once

#include "write/page/swing_picture.hpp"

#include <string>
#include <string_view>

/// The pictures as SVG 1.1. Everything is drawn with the classes of picture_style().
namespace fingerturn {

/// A stretch of a picture along time.
struct Window {
  double begin = 0;
  double end = 0;
};

/// Draws the parts of a hand's pictures one after another, from left to right.
class HandDrawer {
 public:
  /// The picture must outlive it.
  explicit HandDrawer(const HandPicture& picture) : picture_(picture) {}

  /// Adds what the window shows; what reaches beyond it is for the viewer to cut off. A window
  /// begins where the last one ended or further on.
  void add(std::string& out, Window window);

 private:
  const HandPicture& picture_;
  std::size_t next_ = 0;
};

/// Adds the bar line that ends a piece and the repeat sign that begins it, where there are such.
void add_bar_lines(std::string& out, const HandPicture& picture, const PageLayout& layout,
                   const Piece& piece);

/// The names of the lanes, right-aligned at `x`.
void add_lane_names(std::string& out, const HandPicture& picture, double x);

/// The rules for the classes, for a light and a dark page.
std::string_view picture_style() noexcept;

/// A number to one decimal, without a trailing zero.
void add_number(std::string& out, double number);

}  // namespace fingerturn
