#pragma once

#include "write/page/swing_picture.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <utility>

/// The pictures as SVG 1.1. Everything is drawn with the classes of picture_style().
namespace fingerturn {

/// A stretch of a picture along time.
struct Window {
  double begin = 0;
  double end = 0;
};

/// Marks of a hand in a row, and which of them stand in the window; the others lead in or out.
struct MarksInWindow {
  std::span<const Mark> marks;
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// Adds what the window shows; what reaches beyond it is for the viewer to cut off.
void draw_marks(std::string& out, const MarksInWindow& shown, const Lanes& lanes, Window window);

/// Draws the parts of a hand's pictures one after another, from left to right.
class HandDrawer {
 public:
  explicit HandDrawer(HandPicture picture) : picture_(std::move(picture)) {}

  [[nodiscard]] const HandPicture& picture() const noexcept { return picture_; }

  /// Adds what a window shows that begins where the last one ended or further on.
  void add(std::string& out, Window window);

 private:
  HandPicture picture_;
  std::size_t next_ = 0;
};

/// A number to one decimal, without a trailing zero.
void add_number(std::string& out, double number);

}  // namespace fingerturn
