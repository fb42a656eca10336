#pragma once

#include "write/page/swing_picture.hpp"

#include <string>

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

/// A number to one decimal, without a trailing zero.
void add_number(std::string& out, double number);

}  // namespace fingerturn
