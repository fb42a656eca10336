#pragma once

#include "cli/exit_status.hpp"
#include "cli/options/report.hpp"

namespace fingerturn::cli {

/// The technical analysis of every note of the inputs.
ExitStatus annotate(const ReportOptions& options);

}  // namespace fingerturn::cli
