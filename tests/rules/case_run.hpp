#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/score.hpp"
#include "rules/case_file.hpp"

#include <optional>
#include <string>
#include <vector>

namespace fingerturn {

/// The passage of a case and what the rules find in it.
struct CaseResult {
  std::vector<std::string> faults;  ///< where the notes could not be read as the case wants it
  Line line;
  LineAnalysis analysis;
};

CaseResult run_case(const Case& run);

/// Runs a case and gives everything in which it comes out otherwise than it says; empty where it
/// holds.
std::vector<std::string> failures_of(const Case& run);

}  // namespace fingerturn
