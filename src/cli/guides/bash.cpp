#include "cli/guides/completions.hpp"
#include "cli/guides/shell_words.hpp"

#include <fmt/format.h>

namespace fingerturn::cli {
namespace {

/// A name of several words may be typed as several, so that the end of one is what is left of it.
/// Readline puts no backslashes before blanks in what is no name of a file, and wants none where a
/// quote is open.
constexpr std::string_view kBashFunctions = R"(
_fingerturn_offer() { # TYPED WORD...: the words that begin with what is typed
  local word typed=$1 raw=${COMP_WORDS[COMP_CWORD]}
  for word in "${@:2}"; do
    [[ $word == "$typed"* ]] || continue
    [[ $raw == [\'\"]* || $word != *' '* ]] || printf -v word %q "$word"
    COMPREPLY+=("$word")
  done
}

_fingerturn_row() { # TYPED WORD...: the same for the last of several words with commas between
  local before=''
  [[ $1 != *,* ]] || before=${1%,*},
  _fingerturn_offer "$1" "${@/#/$before}"
}

_fingerturn_names() { # TYPED NAME...: names of several words, the first of which may be typed
  local before='' name from IFS=' '
  local -a left
  for ((from = COMP_CWORD > 4 ? COMP_CWORD - 3 : 2; from <= COMP_CWORD; from++)); do
    before="${COMP_WORDS[*]:from:COMP_CWORD-from}"
    before=${before//[\\\'\"]/}
    left=()
    for name in "${@:2}"; do
      [[ $name != "${before:+$before }$1"* ]] || left+=("${name#"${before:+$before }"}")
    done
    [[ ${#left[@]} -eq 0 ]] || break
  done
  _fingerturn_offer "$1" "${left[@]}"
}

_fingerturn_scores() { # TYPED: folders, and files that can be read
  compopt -o filenames
  mapfile -t COMPREPLY < <(compgen -d -- "$1"@files@)
}

_fingerturn_files() { # TYPED: any
  compopt -o filenames
  mapfile -t COMPREPLY < <(compgen -f -- "$1")
}
)";

constexpr std::string_view kBashMain = R"(
_fingerturn() {
  local typed=$2 option=${COMP_WORDS[COMP_CWORD - 1]} command=${COMP_WORDS[1]}
  COMPREPLY=()
  # In --format=text the sign stands as a word of its own.
  if [[ ${COMP_WORDS[COMP_CWORD]} == = ]]; then
    typed=''
  elif [[ $option == = ]]; then
    option=${COMP_WORDS[COMP_CWORD - 2]}
  else
    typed=${typed//\\/}
  fi
  [[ $COMP_CWORD -gt 1 ]] || command=''
  [[ $option == -* ]] || option=''
  case $command:$option in
@values@  esac
  case $command:$typed in
@options@@arguments@    :*) _fingerturn_offer "$typed" @commands@ ;;
  esac
}

complete -F _fingerturn fingerturn
)";

/// "*.[xX][mM][lL]"
std::string pattern_of(std::string_view ending) {
  std::string pattern = "*";
  for (const char letter : ending) {
    const bool is_letter = letter >= 'a' && letter <= 'z';
    pattern += is_letter ? fmt::format("[{}{}]", letter, static_cast<char>(letter - 'a' + 'A'))
                         : std::string(1, letter);
  }
  return pattern;
}

/// What offers the values; ":" where nothing is known of them.
std::string action_for(const ProgramTable& table, const KnownValues& values) {
  if (values.is_score) return "_fingerturn_scores \"$typed\"";
  if (values.is_file) return "_fingerturn_files \"$typed\"";
  const auto& words = values.list.empty() ? values.words : table.lists.at(values.list);
  if (words.empty()) return ":";
  const bool is_shared = !values.list.empty();
  const std::string words_there =
      is_shared ? fmt::format("\"${{_fingerturn_{}[@]}}\"", values.list) : quoted_for_shell(words);
  const std::string_view how = values.is_row ? "row" : is_shared ? "names" : "offer";
  return fmt::format("_fingerturn_{} \"$typed\" {}", how, words_there);
}

std::string option_cases(const ProgramTable& table, const CommandEntry& command) {
  std::string cases;
  for (const OptionEntry& option : command.options) {
    if (option.value.empty()) continue;
    std::string names;
    for (const std::string& name : option.names) {
      names += fmt::format("{}{}:{}", names.empty() ? "" : " | ", command.name, name);
    }
    cases += fmt::format("    {}) {}; return ;;\n", names, action_for(table, option.values));
  }
  return cases;
}

std::string names_case(const CommandEntry& command) {
  std::vector<std::string> names;
  for (const OptionEntry& option : command.options) {
    names.insert(names.end(), option.names.begin(), option.names.end());
  }
  return fmt::format("    {}:-*) _fingerturn_offer \"$typed\" {} ;;\n", command.name,
                     quoted_for_shell(names));
}

/// Words before the last kind of word that a command takes are completed as it is.
std::string argument_case(const ProgramTable& table, const CommandEntry& command) {
  if (command.arguments.empty()) return "";
  return fmt::format("    {}:*) {} ;;\n", command.name,
                     action_for(table, command.arguments.back().values));
}

}  // namespace

std::string write_bash(const ProgramTable& table) {
  std::string files;
  for (const std::string_view ending : table.endings) {
    files += fmt::format("\n    compgen -f -X '!{}' -- \"$1\"", pattern_of(ending));
  }
  std::string lists;
  for (const auto& [name, words] : table.lists) {
    lists += fmt::format("_fingerturn_{}=({})\n", name, quoted_for_shell(words));
  }
  std::vector<std::string> commands;
  std::string values;
  std::string options = names_case({{}, {}, {}, table.program.options, {}});
  std::string arguments;
  for (const CommandEntry& command : table.commands) {
    commands.push_back(command.name);
    values += option_cases(table, command);
    options += names_case(command);
    arguments += argument_case(table, command);
  }
  std::string text = "# What bash completes for fingerturn, made from its table of options.\n";
  text += lists + filled_in(std::string(kBashFunctions), "@files@", files);
  std::string main = filled_in(std::string(kBashMain), "@commands@", quoted_for_shell(commands));
  main = filled_in(std::move(main), "@values@", values);
  main = filled_in(std::move(main), "@options@", options);
  return text + filled_in(std::move(main), "@arguments@", arguments);
}

}  // namespace fingerturn::cli
