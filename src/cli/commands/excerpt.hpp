#pragma once

#include "cli/commands/annotate.hpp"
#include "cli/exit_status.hpp"

namespace fingerturn::cli {

/// Some bars of a score in the passage notation, ready to be edited. Takes one input and its bars.
ExitStatus excerpt(const AnnotateOptions& options);

}  // namespace fingerturn::cli
