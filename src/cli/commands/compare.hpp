#pragma once

#include "cli/commands/annotate.hpp"
#include "cli/exit_status.hpp"

namespace fingerturn::cli {

/// Fingerings of the same notes side by side: the passages of one input, or those of several inputs
/// passage by passage; with `suggest` beside what a model suggests. Takes the formats text and
/// json.
ExitStatus compare(const AnnotateOptions& options);

}  // namespace fingerturn::cli
