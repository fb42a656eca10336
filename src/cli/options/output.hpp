#pragma once

#include <string>

#include <CLI/App.hpp>

namespace fingerturn::cli {

/// The file that a command writes to; empty for standard output.
CLI::Option* add_output(CLI::App& command, std::string& output);

}  // namespace fingerturn::cli
