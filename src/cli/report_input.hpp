#pragma once

#include "cli/options/report.hpp"
#include "cli/score_input.hpp"

#include <string>

namespace fingerturn::cli {

/// Reads an input to report on in the format that was asked for, and fills in missing fingers where
/// that was asked for.
ScoreInput read_to_report(const std::string& path, const ReportOptions& options,
                          Progress& progress);

/// How missing fingers are filled in, by what was asked for.
FingeringOptions fingering_options(const ReportOptions& options);

}  // namespace fingerturn::cli
