#pragma once

#include "cli/guides/table.hpp"

#include <string>

/// What shells complete: commands, options, the words that are values, and files that can be read.
namespace fingerturn::cli {

std::string write_bash(const ProgramTable& table);
std::string write_zsh(const ProgramTable& table);
std::string write_fish(const ProgramTable& table);

}  // namespace fingerturn::cli
