#include "cli/built_with.hpp"
#include "cli/commands.hpp"
#include "cli/empty_value.hpp"
#include "cli/faults.hpp"
#include "cli/help_format.hpp"
#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "cli/streams.hpp"
#include "cli/usage_message.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/version.hpp"
#include "text/wrap.hpp"

#include <algorithm>
#include <exception>
#include <memory>
#include <span>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include <CLI/App.hpp>

namespace fingerturn::cli {
namespace {

using Words = std::span<const char* const>;

constexpr std::string_view kDescription =
    "fingerturn reads a piano passage with its finger numbers and says for every note which way "
    "the forearm turns, and whether the note before has prepared the turn (single) or the forearm "
    "must swing back first (double).";

std::string footer() {
  return wrapped("Exit status: ",
                 "0 done; 1 done, and check found what --fail-on asks about, or find nothing; 2 "
                 "wrong usage; 3 some "
                 "input could not be read, the rest was done.",
                 kHelpColumns) +
         '\n' + wrapped("Caution: ", caution(), kHelpColumns);
}

/// Scripts read the first line.
std::string version() {
  std::string lines = "fingerturn " + std::string(kVersion) + '\n' +
                      wrapped("built with ", kBuiltWith, kHelpColumns);
  lines.pop_back();  // the line feed at the end, which comes of itself
  return lines;
}

void describe(CLI::App& program) {
  program.formatter(std::make_shared<HelpFormat>());
  program.set_help_flag("-h,--help", "Show this help");
  program.set_version_flag("--version", version, "Show the version, and what it was built with");
  program.get_formatter()->label("SUBCOMMAND", "COMMAND");
  program.failure_message(
      [](const CLI::App* app, const CLI::Error& problem) { return usage_message(*app, problem); });
  program.footer(footer());
  program.require_subcommand(1);
}

std::vector<Command> add_commands(CLI::App& program, Words words) {
  std::vector<Command> commands;
  for (const auto add : kCommands) {
    const Command& command = commands.emplace_back(add(program));
    command.line->group("Commands");
    command.line->preparse_callback([line = command.line, words](std::size_t following) {
      refuse_empty_values(*line, words.last(following));
    });
  }
  return commands;
}

/// Does what the words ask for.
ExitStatus run(Words words) {
  CLI::App program{wrapped("", kDescription, kHelpColumns), "fingerturn"};
  describe(program);
  const std::vector<Command> commands = add_commands(program, words);
  try {
    program.parse(static_cast<int>(words.size()), words.data());
  } catch (const CLI::ParseError& problem) {
    // Being asked for help is one of them.
    std::ostringstream help;
    if (program.exit(problem, help) != 0) return ExitStatus::wrong_usage;
    return write_whole("", help.str());
  }
  const auto is_chosen = [](const Command& command) { return command.line->parsed(); };
  return std::ranges::find_if(commands, is_chosen)->action();
}

}  // namespace
}  // namespace fingerturn::cli

int main(int count, char** words) {
  using fingerturn::cli::ExitStatus;
  fingerturn::cli::prepare_streams();
  ExitStatus status = ExitStatus::input_failed;
  try {
    status = fingerturn::cli::run({words, static_cast<std::size_t>(count)});
  } catch (const std::exception& fault) {
    fingerturn::cli::say(fingerturn::cli::fault_words(fault));
  }
  return static_cast<int>(status);
}
