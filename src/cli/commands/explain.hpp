#pragma once

#include "cli/exit_status.hpp"

#include <string>

namespace fingerturn::cli {

/// What the command line of `explain` asks for.
struct ExplainOptions {
  std::string name;       ///< of a rule or a message; empty for the list of all
  bool messages = false;  ///< messages only
  bool markdown = false;  ///< all rules, or all messages, as one Markdown page
};

/// A rule or a message in words.
ExitStatus explain(const ExplainOptions& options);

}  // namespace fingerturn::cli
