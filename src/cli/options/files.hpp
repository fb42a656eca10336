#pragma once

#include <string>
#include <vector>

#include <CLI/App.hpp>

namespace fingerturn::cli {

/// The files that a command reads: one or more.
void add_files(CLI::App& command, std::vector<std::string>& files, const std::string& description);

/// Whether all can be read; false, and a message, where standard input is named more than once.
bool can_be_read(const std::vector<std::string>& files,
                 const std::vector<std::string>& beside = {});

}  // namespace fingerturn::cli
