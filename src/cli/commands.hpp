#pragma once

#include "cli/exit_status.hpp"

#include <array>
#include <functional>

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

/// All of them, in the order of help.
inline constexpr std::array kCommands{
    add_annotate,  //
    add_finger,    //
    add_scale,     //
    add_practice,  //
    add_excerpt,   //
    add_compare,   //
    add_check,     //
    add_find,      //
    add_explain,   //
};

}  // namespace fingerturn::cli
