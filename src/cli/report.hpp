#pragma once

#include "cli/options/report.hpp"
#include "cli/score_input.hpp"

#include <string>

namespace fingerturn::cli {

/// Reads an input to report on in the format that was asked for, and fills in missing fingers where
/// that was asked for.
ScoreInput read_to_report(const std::string& path, const ReportOptions& options);

/// The report on an input, or on passages of several, which have no document.
std::string report_text(ScoreInput input, const ReportOptions& options);

/// Whether a format is one of pages: HTML, SVG or Markdown.
bool goes_on_pages(Format format) noexcept;

}  // namespace fingerturn::cli
