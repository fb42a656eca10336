#pragma once

#include "fingerturn/analysis.hpp"

#include <span>

namespace fingerturn {

/// Counts over these events of a line.
Totals totals_of(const Line& line, std::span<const EventAnalysis> events) noexcept;

}  // namespace fingerturn
