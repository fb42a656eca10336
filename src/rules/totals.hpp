#pragma once

#include "fingerturn/analysis.hpp"

#include <cstddef>
#include <limits>
#include <span>

namespace fingerturn {

/// Totals while they are being counted, event by event in their order; events may be left out.
class Count {
 public:
  /// `fingered`: every struck note of the event has a finger.
  void add(const EventAnalysis& event, bool fingered) noexcept;
  [[nodiscard]] Totals totals() const noexcept;

 private:
  void count_swings(const EventAnalysis& event) noexcept;

  Totals counted_;
  std::size_t double_run_ = 0;  // up to here
  std::size_t last_ = 0;        // the number of the last event in its line
  std::size_t last_arc_ = 0;
  double slowest_ = std::numeric_limits<double>::infinity();
};

/// Counts over these events of a line.
Totals totals_of(const Line& line, std::span<const EventAnalysis> events) noexcept;

}  // namespace fingerturn
