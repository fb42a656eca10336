#pragma once

#include "cli/commands.hpp"
#include "cli/exit_status.hpp"

#include <span>
#include <string_view>
#include <vector>

// Where a CLI::App is made all of these must have been read.
#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

namespace fingerturn::cli {

/// What the program is for, in a sentence.
std::string_view program_words() noexcept;

/// What an exit status means.
struct StatusMeaning {
  ExitStatus status;
  std::string_view words;
};
std::span<const StatusMeaning> status_meanings() noexcept;

/// Gives the program its name, its words and its options, and all commands; where `first`, the
/// first word that was typed, names one, only that: no other can follow, and the options of all
/// would take a third of a short run.
std::vector<Command> describe(CLI::App& program, std::string_view first = {});

}  // namespace fingerturn::cli
