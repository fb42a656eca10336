#pragma once

#include "write/page/ink/ink.hpp"

#include <cstdint>
#include <string>
#include <string_view>

namespace fingerturn {

/// Lengths are written as hundredths of a staff space, so that steps between rounded places do not
/// add up to an error.
using Hundredths = std::int64_t;

Hundredths hundredths(double length) noexcept;

/// "12.5", ".07", "-3".
void add_length(std::string& out, double length);

/// ' x="12.5"'
void add_attribute(std::string& out, std::string_view name, double length);

/// A path that is drawn on: it says where it begins only where it does not go on from where it
/// ended, and all else in steps.
class PathText {
 public:
  void move_to(Point point);
  void line_to(Point point);
  void curve_to(Point first, Point second, Point point);
  void close();

  [[nodiscard]] const std::string& text() const noexcept { return out_; }

 private:
  struct Place {
    Hundredths x = 0;
    Hundredths y = 0;
  };

  static Place place_of(Point point) noexcept;
  void add(char letter, Hundredths length);
  void add_next(Hundredths length);

  std::string out_;
  Place at_;
  bool begun_ = false;
};

}  // namespace fingerturn
