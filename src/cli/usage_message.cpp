#include "cli/usage_message.hpp"

#include "cli/messages.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <string_view>
#include <vector>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

using Names = std::vector<std::string_view>;

bool looks_like_option(std::string_view word) { return word.size() > 1 && word.front() == '-'; }

/// The first of several words that looks like an option, without a value after it; else empty.
std::string_view first_option(const std::vector<std::string>& words) {
  const auto found = std::ranges::find_if(words, looks_like_option);
  if (found == words.end()) return {};
  return std::string_view(*found).substr(0, found->find('='));
}

Names command_names(const CLI::App& program) {
  Names names;
  for (const CLI::App* command : program.get_subcommands({})) names.push_back(command->get_name());
  return names;
}

std::string no_command(std::string_view word, const Names& commands) {
  const std::string_view meant = nearest_word(word, commands);
  return fmt::format("there is no command \"{}\"; {}", word,
                     meant.empty() ? "name " + listed(commands, "or")
                                   : fmt::format("did you mean \"{}\"?", meant));
}

/// `word` begins with its dashes.
std::string no_option(std::string_view word, const CLI::App& command) {
  Names names;
  for (const CLI::Option* option : command.get_options()) {
    names.insert(names.end(), option->get_lnames().begin(), option->get_lnames().end());
  }
  const std::string_view bare = word.substr(std::min(word.find_first_not_of('-'), word.size()));
  const std::string_view meant = nearest_word(bare, names);
  return fmt::format("there is no option {}{}", word,
                     meant.empty() ? "" : fmt::format("; did you mean --{}?", meant));
}

bool has_option(const CLI::App* command, std::string_view word) {
  return command->get_option_no_throw(std::string(word)) != nullptr;
}

/// An option or word that stands where a command should.
std::string not_a_command(const std::vector<std::string>& words, const CLI::App& program) {
  if (!looks_like_option(words.front())) {
    return no_command(words.front(), command_names(program));
  }
  const std::string_view option = first_option(words);
  const auto commands = program.get_subcommands({});
  const bool known = std::ranges::any_of(
      commands, [option](const CLI::App* command) { return has_option(command, option); });
  return known ? fmt::format("{} stands after the command", option) : no_option(option, program);
}

/// "excerpt takes one file, 2 were given".
std::string too_many(const CLI::App& command, std::size_t beyond_one) {
  std::string what = "word";
  for (const CLI::Option* option : command.get_options()) {
    if (option->get_positional()) what = lower_case(option->get_name());
  }
  return fmt::format("{} takes one {}, {} were given", command.get_name(), what, beyond_one + 1);
}

/// An option with too many values, or too few.
std::string wrong_count(const CLI::App& command, const std::string& words) {
  const std::string name = words.substr(0, words.find_first_of(": "));
  const CLI::Option* option = command.get_option_no_throw(name);
  if (option == nullptr) return words;
  return option->count() == 0 ? fmt::format("{} needs a value, {}", name, option->get_type_name())
                              : fmt::format("{} is to be given once only", name);
}

std::string what_is_wrong(const CLI::App& program, const CLI::Error& problem) {
  const std::vector<std::string> before_command = program.remaining();
  if (!before_command.empty()) return not_a_command(before_command, program);
  if (program.get_subcommands().empty()) {
    return problem.get_name() == "RequiredError"
               ? "name a command, " + listed(command_names(program), "or")
               : problem.what();
  }
  const CLI::App& command = *program.get_subcommands().front();
  const std::vector<std::string> left_over = command.remaining();
  const std::string_view option = first_option(left_over);
  if (!option.empty()) return no_option(option, command);
  if (!left_over.empty()) return too_many(command, left_over.size());
  if (problem.get_name() == "ArgumentMismatch") return wrong_count(command, problem.what());
  return problem.what();
}

}  // namespace

std::string usage_message(const CLI::App& program, const CLI::Error& problem) {
  const auto commands = program.get_subcommands();
  const std::string of_command = commands.empty() ? "" : commands.front()->get_name() + ' ';
  return message_line(what_is_wrong(program, problem)) +
         fmt::format("fingerturn {}--help says more\n", of_command);
}

}  // namespace fingerturn::cli
