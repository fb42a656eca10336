#include "cli/guides/completions.hpp"
#include "cli/guides/shell_words.hpp"

#include <fmt/format.h>

namespace fingerturn::cli {
namespace {

/// A name of several words may be typed as several, so that the end of one is what is left of it.
constexpr std::string_view kZshFunctions = R"(
_fingerturn_names() { # what compadd is to be given, and LIST
  local list=$argv[-1] before from name
  local -a left
  argv[-1]=()
  for ((from = CURRENT > 4 ? CURRENT - 3 : 1; from <= CURRENT; from++)); do
    before="${(j: :)${(Q)words[from,CURRENT-1]}}"
    before=${before:+$before }
    left=()
    for name in ${(P)list}; do
      [[ $name != ${(b)before}* ]] || left+=(${name#${(b)before}})
    done
    (( $#left == 0 )) || break
  done
  compadd "$@" -a left
}

_fingerturn_words() { # what compadd is to be given, and LIST
  compadd "$@[1,-2]" -a $argv[-1]
}

_fingerturn_scores() {
  local ret=1
  _path_files "$@" -/ && ret=0
  _path_files "$@" -g '(#i)*(@endings@)(-.)' && ret=0
  return ret
}
)";

constexpr std::string_view kZshMain = R"(
_fingerturn() {
  local curcontext=$curcontext state line ret=1
  local -A opt_args
  local -a commands=(
@commands@  )
  _arguments -s -S -C \
@options@    '1:command:->command' \
    '*::argument:->argument' && ret=0
  case $state in
    command) _describe -t commands command commands && ret=0 ;;
    argument)
      curcontext=${curcontext%:*:*}:fingerturn-$words[1]:
      case $words[1] in
@cases@      esac ;;
  esac
  return ret
}

if [[ $funcstack[1] == _fingerturn ]]; then
  _fingerturn "$@"
else
  compdef _fingerturn fingerturn
fi
)";

/// What stands between brackets or colons of a specification.
std::string plain(std::string_view words) { return with_backslashes(words, "\\[]:"); }

/// ":FORMAT:(text json)", for a value or a word; empty for a flag.
std::string value_part(const std::string& name, const KnownValues& values) {
  std::string action = " ";
  if (values.is_file) action = "_files";
  if (values.is_score) action = "_fingerturn_scores";
  if (!values.words.empty()) action = fmt::format("({})", fmt::join(values.words, " "));
  if (!values.list.empty()) action = "_fingerturn_names _fingerturn_" + values.list;
  if (!values.list.empty() && values.is_row) {
    action = "_sequence _fingerturn_words - _fingerturn_" + values.list;
  }
  return fmt::format(":{}:{}", plain(name), action);
}

/// A line for each name of an option, which leaves out what cannot stand beside it.
std::string option_lines(const OptionEntry& option, std::string_view indent) {
  std::vector<std::string> apart = option.excludes;
  if (!option.is_repeated) apart.insert(apart.end(), option.names.begin(), option.names.end());
  const std::string without = apart.empty() ? "" : fmt::format("({})", fmt::join(apart, " "));
  const std::string value = option.value.empty() ? "" : value_part(option.value, option.values);
  std::string lines;
  for (const std::string& name : option.names) {
    // With "=" a value may stand behind that sign as well.
    const bool takes_sign = !option.value.empty() && name.starts_with("--");
    const std::string specification =
        fmt::format("{}{}{}{}[{}]{}", without, option.is_repeated ? "*" : "", name,
                    takes_sign ? "=" : "", plain(option.words), value);
    lines += fmt::format("{}{} \\\n", indent, quoted_for_shell(specification));
  }
  return lines;
}

std::string command_case(const CommandEntry& command) {
  constexpr std::string_view kIndent = "            ";
  std::string lines;
  for (const OptionEntry& option : command.options) lines += option_lines(option, kIndent);
  for (const OptionEntry& argument : command.arguments) {
    const std::string& name = argument.names.front();
    const std::string specification =
        (argument.is_repeated ? "*" : "") + value_part(name, argument.values);
    lines += fmt::format("{}{} \\\n", kIndent, quoted_for_shell(specification));
  }
  return fmt::format("        {})\n          _arguments -s -S \\\n{}{}&& ret=0 ;;\n", command.name,
                     lines, kIndent);
}

}  // namespace

std::string write_zsh(const ProgramTable& table) {
  std::string endings;
  for (const std::string_view ending : table.endings) {
    endings += fmt::format("{}{}", endings.empty() ? "" : "|", ending);
  }
  std::string lists;
  for (const auto& [name, words] : table.lists) {
    lists += fmt::format("typeset -ga _fingerturn_{}=({})\n", name, quoted_for_shell(words));
  }
  std::string commands;
  std::string cases;
  for (const CommandEntry& command : table.commands) {
    commands +=
        fmt::format("    {}\n", quoted_for_shell(command.name + ':' + plain(command.words)));
    cases += command_case(command);
  }
  std::string options;
  for (const OptionEntry& option : table.program.options) options += option_lines(option, "    ");
  std::string text = "#compdef fingerturn\n";
  text += "# What zsh completes for fingerturn, made from its table of options.\n";
  text += lists + filled_in(std::string(kZshFunctions), "@endings@", endings);
  std::string main = filled_in(std::string(kZshMain), "@commands@", commands);
  main = filled_in(std::move(main), "@options@", options);
  return text + filled_in(std::move(main), "@cases@", cases);
}

}  // namespace fingerturn::cli
