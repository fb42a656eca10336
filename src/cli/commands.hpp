#pragma once

#include "cli/exit_status.hpp"

#include <array>
#include <functional>
#include <string_view>

#include <CLI/App.hpp>

namespace fingerturn::cli {

/// A command: the part of the command line that it has, and what it does once that has been read.
struct Command {
  CLI::App* line;
  std::function<ExitStatus()> action;
};

/// Each adds itself to the program, with its words and its options; it is in the file of its name
/// in commands/.
Command add_annotate(CLI::App& program);
Command add_finger(CLI::App& program);
Command add_scale(CLI::App& program);
Command add_practice(CLI::App& program);
Command add_excerpt(CLI::App& program);
Command add_compare(CLI::App& program);
Command add_check(CLI::App& program);
Command add_find(CLI::App& program);
Command add_explain(CLI::App& program);

struct NamedCommand {
  std::string_view name;
  Command (*add)(CLI::App& program);
};

/// All of them, in the order of help.
inline constexpr std::array<NamedCommand, 9> kCommands{{
    {"annotate", add_annotate},
    {"finger", add_finger},
    {"scale", add_scale},
    {"practice", add_practice},
    {"excerpt", add_excerpt},
    {"compare", add_compare},
    {"check", add_check},
    {"find", add_find},
    {"explain", add_explain},
}};

}  // namespace fingerturn::cli
