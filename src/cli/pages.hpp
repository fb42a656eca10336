#pragma once

#include "cli/commands/annotate.hpp"
#include "cli/exit_status.hpp"
#include "fingerturn/report.hpp"

#include <string>

/// Pages hold passages of several inputs together, or go into a folder one by one.
namespace fingerturn::cli {

/// Writes all inputs as one page, or, where the output is a folder, a page for each passage and an
/// index. A folder is one that is there, or a path that ends with a slash.
ExitStatus write_pages(const AnnotateOptions& options);

/// Whether a format is one of pages: HTML, SVG or Markdown.
bool goes_on_pages(Format format) noexcept;

/// A report as a page of the format that was asked for.
std::string page_text(const AnalysedScore& analysed, const AnnotateOptions& options);

}  // namespace fingerturn::cli
