#pragma once

#include "cli/exit_status.hpp"

#include <string>

namespace fingerturn::cli {

/// What the command line of `explain` asks for.
struct ExplainOptions {
  std::string rule;       ///< empty for the list of all rules
  bool markdown = false;  ///< all rules as one Markdown page
};

/// A rule in words, with its source.
ExitStatus explain(const ExplainOptions& options);

}  // namespace fingerturn::cli
