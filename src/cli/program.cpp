#include "cli/program.hpp"

#include "cli/built_with.hpp"
#include "cli/help_format.hpp"
#include "cli/usage_message.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/version.hpp"
#include "text/wrap.hpp"

#include <algorithm>
#include <array>
#include <memory>
#include <string>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

constexpr std::array kStatusMeanings{
    StatusMeaning{ExitStatus::done, "done"},
    StatusMeaning{ExitStatus::answer,
                  "done, and check found what --fail-on asks about, or find found nothing"},
    StatusMeaning{ExitStatus::wrong_usage, "wrong usage"},
    StatusMeaning{ExitStatus::input_failed, "some input could not be read, the rest was done"},
};

std::string footer() {
  std::string statuses;
  for (const auto& [status, words] : kStatusMeanings) {
    statuses +=
        fmt::format("{}{} {}", statuses.empty() ? "" : "; ", static_cast<int>(status), words);
  }
  return wrapped("Exit status: ", statuses + '.', kHelpColumns) + '\n' +
         wrapped("Caution: ", caution(), kHelpColumns);
}

/// Scripts read the first line.
std::string version() {
  std::string lines = "fingerturn " + std::string(kVersion) + '\n' +
                      wrapped("built with ", kBuiltWith, kHelpColumns);
  lines.pop_back();  // the line feed at the end, which comes of itself
  return lines;
}

}  // namespace

std::string_view program_words() noexcept {
  return "fingerturn reads a piano passage with its finger numbers and says for every note which "
         "way the forearm turns, and whether the note before has prepared the turn (single) or "
         "the forearm must swing back first (double).";
}

std::span<const StatusMeaning> status_meanings() noexcept { return kStatusMeanings; }

std::vector<Command> describe(CLI::App& program, std::string_view first) {
  program.name("fingerturn");
  program.description(wrapped("", program_words(), kHelpColumns));
  program.formatter(std::make_shared<HelpFormat>());
  program.set_help_flag("-h,--help", "Show this help");
  program.set_version_flag("--version", version, "Show the version, and what it was built with");
  program.get_formatter()->label("SUBCOMMAND", "COMMAND");
  program.failure_message(
      [](const CLI::App* app, const CLI::Error& problem) { return usage_message(*app, problem); });
  program.footer(footer());
  program.require_subcommand(1);
  std::vector<Command> commands;
  const bool is_named = std::ranges::find(kCommands, first, &NamedCommand::name) != kCommands.end();
  for (const NamedCommand& known : kCommands) {
    if (is_named && known.name != first) continue;
    commands.push_back(known.add(program));
    commands.back().line->group("Commands");
  }
  return commands;
}

}  // namespace fingerturn::cli
