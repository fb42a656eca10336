#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <exception>
#include <string>

#include "cli/messages.hpp"
#include "cli/options.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/version.hpp"
#include "report/wrap.hpp"

namespace fingerturn::cli {
namespace {

constexpr std::string_view kDescription =
    "fingerturn reads a piano passage with its finger numbers and says for every note which way "
    "the forearm turns, and whether the note before has prepared the turn (single) or the forearm "
    "must swing back first (double).";

std::string footer() {
  constexpr int kHelpColumns = 80;
  return "Exit status: 0 done; 2 wrong usage; 3 some input could not be read, the rest was\n"
         "done.\n\n" +
         wrapped("Caution: ", caution(), kHelpColumns);
}

ExitStatus run(int count, char** words) {
  CLI::App program{wrapped("", kDescription, 80), "fingerturn"};
  program.footer(footer());
  program.set_version_flag("--version", "fingerturn " + std::string(kVersion));
  program.require_subcommand(1);
  AnnotateOptions annotate_options;
  ExplainOptions explain_options;
  const CLI::App* annotate_command = add_annotate(program, annotate_options);
  add_explain(program, explain_options);
  try {
    program.parse(count, words);
  } catch (const CLI::ParseError& problem) {
    return program.exit(problem) == 0 ? ExitStatus::done : ExitStatus::wrong_usage;
  }
  return annotate_command->parsed() ? annotate(annotate_options) : explain(explain_options);
}

}  // namespace
}  // namespace fingerturn::cli

int main(int count, char** words) {
  try {
    return static_cast<int>(fingerturn::cli::run(count, words));
  } catch (const std::exception& problem) {
    fingerturn::cli::say(problem.what());
    return static_cast<int>(fingerturn::cli::ExitStatus::wrong_usage);
  }
}
