#pragma once

#include "fingerturn/analysis.hpp"

namespace fingerturn {

/// Applies the rules to one line of a passage. The options are settled: what they leave open is
/// not known.
LineAnalysis analyse_line(const Passage& passage, const Line& line, const AnalyseOptions& options);

}  // namespace fingerturn
