#pragma once

#include "cli/commands/annotate.hpp"
#include "cli/commands/check.hpp"
#include "cli/commands/explain.hpp"
#include "cli/commands/scale.hpp"

#include <CLI/App.hpp>

/// The command line in words: what each command and option is called and what help says of it.
namespace fingerturn::cli {

CLI::App* add_annotate(CLI::App& program, AnnotateOptions& options);
CLI::App* add_finger(CLI::App& program, AnnotateOptions& options);
CLI::App* add_excerpt(CLI::App& program, AnnotateOptions& options);
CLI::App* add_compare(CLI::App& program, AnnotateOptions& options);
CLI::App* add_check(CLI::App& program, CheckOptions& options);
CLI::App* add_scale(CLI::App& program, ScaleCommandOptions& options);
CLI::App* add_explain(CLI::App& program, ExplainOptions& options);

}  // namespace fingerturn::cli
