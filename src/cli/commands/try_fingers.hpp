#pragma once

#include "cli/exit_status.hpp"
#include "cli/options/report.hpp"

namespace fingerturn::cli {

/// One input with other fingers at some moments: what changes, beside what is written, or in a
/// format of music the input with these fingers.
ExitStatus try_fingers(const ReportOptions& options);

}  // namespace fingerturn::cli
