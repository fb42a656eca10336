#pragma once

#include <cstddef>
#include <string_view>

namespace fingerturn {

/// A box in staff spaces, y downwards.
struct Box {
  double left = 0;
  double top = 0;
  double right = 0;
  double bottom = 0;

  [[nodiscard]] double width() const noexcept { return right - left; }
  [[nodiscard]] double height() const noexcept { return bottom - top; }
  [[nodiscard]] Box moved(double x, double y) const noexcept {
    return {left + x, top + y, right + x, bottom + y};
  }
};

/// How many units of an outline's path are a staff space.
inline constexpr double kOutlineUnits = 250;

/// A musical sign: its place is the left end of the line on which it stands.
struct Outline {
  std::string_view id;
  Box box;
  std::string_view path;  ///< as SVG writes it, in outline units
};

}  // namespace fingerturn
