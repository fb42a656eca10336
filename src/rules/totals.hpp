#pragma once

#include "fingerturn/analysis.hpp"

#include <span>

namespace fingerturn {

/// Counts the events of a line.
Totals totals_of(std::span<const EventAnalysis> events) noexcept;

}  // namespace fingerturn
