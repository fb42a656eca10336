#pragma once

#include <string>

#include <CLI/App.hpp>

namespace fingerturn::cli {

/// What is wrong with a command line, and which help says more; each on a line of its own.
///
///     fingerturn: there is no option --bar; did you mean --bars?
///     fingerturn annotate --help says more
std::string usage_message(const CLI::App& program, const CLI::Error& problem);

}  // namespace fingerturn::cli
