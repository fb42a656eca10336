#pragma once

#include "write/page/ink/ink.hpp"

#include <cstddef>
#include <vector>

namespace fingerturn {

/// How far inks reach up and down along a system.
class Skyline {
 public:
  explicit Skyline(double width);

  void add(const Box& box);
  void add(const Ink& ink);
  void add(const Inks& inks);

  /// The highest and lowest that is reached between two places; where nothing is, `none`.
  [[nodiscard]] double top(double left, double right, double none) const;
  [[nodiscard]] double bottom(double left, double right, double none) const;
  /// How far another skyline must lie below this one so that nothing of them comes nearer than
  /// `air`.
  [[nodiscard]] double distance_to(const Skyline& below, double air) const;

 private:
  [[nodiscard]] std::size_t place_of(double x) const;

  std::vector<double> tops_;
  std::vector<double> bottoms_;
};

}  // namespace fingerturn
