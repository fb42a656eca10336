#pragma once

#include "fingerturn/report.hpp"

#include <string>
#include <string_view>
#include <vector>

/// What the reports for the terminal begin with.
namespace fingerturn {

/// A title, which anybody may have written, in as many lines as it needs.
std::string title_line(std::string_view title, const TextStyle& style);

/// Parts of a line, joined by the sign between them, in as many lines as they need.
std::string joined_lines(const std::vector<std::string>& parts, const TextStyle& style);

}  // namespace fingerturn
