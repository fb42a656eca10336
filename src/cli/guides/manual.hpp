#pragma once

#include "cli/guides/table.hpp"

#include <string>

/// Manual pages, in the form of the macros "man". Equal bytes for equal tables: they have no date.
namespace fingerturn::cli {

/// The page of the program, which names those of its commands.
std::string write_manual(const ProgramTable& table);
/// The page of a command.
std::string write_manual(const ProgramTable& table, const CommandEntry& command);

/// "fingerturn-annotate", the name of a command's page.
std::string manual_name(const ProgramTable& table, const CommandEntry& command);

}  // namespace fingerturn::cli
