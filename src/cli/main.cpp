#include "cli/commands/compare.hpp"
#include "cli/commands/excerpt.hpp"
#include "cli/empty_value.hpp"
#include "cli/help_format.hpp"
#include "cli/messages.hpp"
#include "cli/options.hpp"
#include "cli/usage_message.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/version.hpp"
#include "text/wrap.hpp"

#include <exception>
#include <memory>
#include <span>
#include <string>

#include <CLI/App.hpp>

namespace fingerturn::cli {
namespace {

constexpr std::string_view kDescription =
    "fingerturn reads a piano passage with its finger numbers and says for every note which way "
    "the forearm turns, and whether the note before has prepared the turn (single) or the forearm "
    "must swing back first (double).";

std::string footer() {
  return wrapped("Exit status: ",
                 "0 done; 1 done, and check found what --fail-on asks about; 2 wrong usage; 3 some "
                 "input could not be read, the rest was done.",
                 kHelpColumns) +
         '\n' + wrapped("Caution: ", caution(), kHelpColumns);
}

ExitStatus run(std::span<const char* const> words) {
  CLI::App program{wrapped("", kDescription, kHelpColumns), "fingerturn"};
  program.formatter(std::make_shared<HelpFormat>());
  program.set_help_flag("-h,--help", "Show this help");
  program.set_version_flag("--version", "fingerturn " + std::string(kVersion), "Show the version");
  program.get_formatter()->label("SUBCOMMAND", "COMMAND");
  program.failure_message(
      [](const CLI::App* app, const CLI::Error& problem) { return usage_message(*app, problem); });
  program.footer(footer());
  program.require_subcommand(1);
  AnnotateOptions annotate_options;
  AnnotateOptions finger_options;
  ScaleCommandOptions scale_options;
  AnnotateOptions excerpt_options;
  AnnotateOptions compare_options;
  CheckOptions check_options;
  ExplainOptions explain_options;
  const CLI::App* annotate_command = add_annotate(program, annotate_options);
  const CLI::App* finger_command = add_finger(program, finger_options);
  const CLI::App* scale_command = add_scale(program, scale_options);
  const CLI::App* excerpt_command = add_excerpt(program, excerpt_options);
  const CLI::App* compare_command = add_compare(program, compare_options);
  const CLI::App* check_command = add_check(program, check_options);
  add_explain(program, explain_options);
  for (CLI::App* command : program.get_subcommands({})) {
    command->preparse_callback([command, words](std::size_t following) {
      refuse_empty_values(*command, words.last(following));
    });
  }
  try {
    program.parse(static_cast<int>(words.size()), words.data());
  } catch (const CLI::ParseError& problem) {
    return program.exit(problem) == 0 ? ExitStatus::done : ExitStatus::wrong_usage;
  }
  if (annotate_command->parsed()) return annotate(annotate_options);
  if (finger_command->parsed()) return annotate(finger_options);
  if (scale_command->parsed()) return scale(scale_options);
  if (excerpt_command->parsed()) return excerpt(excerpt_options);
  if (compare_command->parsed()) return compare(compare_options);
  if (check_command->parsed()) return check(check_options);
  return explain(explain_options);
}

}  // namespace
}  // namespace fingerturn::cli

int main(int count, char** words) {
  try {
    return static_cast<int>(fingerturn::cli::run({words, static_cast<std::size_t>(count)}));
  } catch (const std::exception& problem) {
    fingerturn::cli::say(problem.what());
    return static_cast<int>(fingerturn::cli::ExitStatus::wrong_usage);
  }
}
