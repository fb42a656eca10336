#include "cli/guides/completions.hpp"
#include "cli/guides/shell_words.hpp"

#include <fmt/format.h>

namespace fingerturn::cli {
namespace {

/// A name of several words may be typed as several, so that the end of one is what is left of it.
constexpr std::string_view kFishFunctions = R"(
function __fingerturn_at --description 'Whether this command is being typed; none without a name'
    set --local words (commandline --tokenize --cut-at-cursor --current-process)
    test "$words[2]" = "$argv[1]"
end

function __fingerturn_names --description 'Names of several words, the first of which may be typed'
    set --local words (commandline --tokenize --cut-at-cursor --current-process)
    for count in 3 2 1
        test (count $words) -ge (math $count + 2); or continue
        set --local before (string join ' ' -- $words[(math 0 - $count)..-1])' '
        set --local found 0
        for name in $argv
            test (string sub --length (string length -- $before) -- $name) = $before; or continue
            set found 1
            string sub --start (math (string length -- $before) + 1) -- $name
        end
        test $found -eq 1; and return
    end
    printf '%s\n' $argv
end

function __fingerturn_row --description 'Words with commas between'
    set --local typed (commandline --current-token | string replace --regex '^--[^=]*=' '')
    set --local before (string match --regex '^.*,' -- $typed)
    printf '%s\n' "$before"$argv
end

function __fingerturn_scores --description 'Folders, and files that can be read'
    set --local typed (commandline --current-token)
    complete --do-complete "'' $typed" | string match --regex --entire '/$|(?i)(@endings@)$'
end

complete --command fingerturn --no-files
)";

std::string quoted_for_fish(std::string_view word) {
  return '\'' + with_backslashes(word, "\\'") + '\'';
}

std::string words_for_fish(const KnownValues& values) {
  if (values.is_score) return " --arguments '(__fingerturn_scores)'";
  if (!values.list.empty()) {
    return fmt::format(" --arguments '(__fingerturn_{} $__fingerturn_{})'",
                       values.is_row ? "row" : "names", values.list);
  }
  if (values.words.empty()) return "";
  return " --arguments " + quoted_for_fish(fmt::format("{}", fmt::join(values.words, " ")));
}

std::string value_for_fish(const KnownValues& values) {
  return values.is_file ? " --require-parameter --force-files"
                        : " --exclusive" + words_for_fish(values);
}

std::string option_line(const std::string& command, const OptionEntry& option) {
  std::string names;
  for (const std::string& name : option.names) {
    const bool is_long = name.starts_with("--");
    names += fmt::format(" --{} {}", is_long ? "long-option" : "short-option",
                         name.substr(is_long ? 2 : 1));
  }
  const std::string value = option.value.empty() ? "" : value_for_fish(option.values);
  return fmt::format("complete --command fingerturn --condition {}{}{} --description {}\n",
                     quoted_for_fish("__fingerturn_at " + quoted_for_fish(command)), names, value,
                     quoted_for_fish(option.words));
}

std::string command_lines(const CommandEntry& command) {
  std::string lines = fmt::format(
      "\ncomplete --command fingerturn --condition '__fingerturn_at \"\"' --arguments {} "
      "--description {}\n",
      command.name, quoted_for_fish(command.words));
  for (const OptionEntry& option : command.options) lines += option_line(command.name, option);
  for (const OptionEntry& argument : command.arguments) {
    lines += fmt::format("complete --command fingerturn --condition {}{}\n",
                         quoted_for_fish("__fingerturn_at " + command.name),
                         words_for_fish(argument.values));
  }
  return lines;
}

}  // namespace

std::string write_fish(const ProgramTable& table) {
  std::string text = "# What fish completes for fingerturn, made from its table of options.\n";
  for (const auto& [name, words] : table.lists) {
    text += fmt::format("set --global __fingerturn_{}", name);
    for (const std::string& word : words) text += ' ' + quoted_for_fish(word);
    text += '\n';
  }
  std::string endings;
  for (const std::string_view ending : table.endings) {
    endings += (endings.empty() ? "" : "|") + with_backslashes(ending, ".");
  }
  text += filled_in(std::string(kFishFunctions), "@endings@", endings);
  for (const OptionEntry& option : table.program.options) text += option_line("", option);
  for (const CommandEntry& command : table.commands) text += command_lines(command);
  return text;
}

}  // namespace fingerturn::cli
