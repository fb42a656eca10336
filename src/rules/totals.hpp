#pragma once

#include <span>

#include "fingerturn/analysis.hpp"

namespace fingerturn {

/// Counts the events of a line.
Totals totals_of(std::span<const EventAnalysis> events) noexcept;

}  // namespace fingerturn
