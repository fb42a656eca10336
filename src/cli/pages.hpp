#pragma once

#include "cli/exit_status.hpp"
#include "cli/options/report.hpp"

/// Pages hold passages of several inputs together, or go into a folder one by one.
namespace fingerturn::cli {

/// Writes all inputs as one page, or, where the output is a folder, a page for each passage and an
/// index. A folder is one that is there, or a path that ends with a slash.
ExitStatus write_pages(const ReportOptions& options);

}  // namespace fingerturn::cli
