#include "cli/guides/manual.hpp"

#include "cli/guides/footer.hpp"
#include "cli/program.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/version.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <string_view>

#include <fmt/format.h>

namespace fingerturn::cli {
namespace {

/// A letter as it is meant: by itself "-" may be set as a hyphen, "'" as a closing quote.
std::string set_letter(std::string_view letter) {
  switch (letter.front()) {
    case '\\':
      return "\\e";
    case '-':
      return "\\-";
    case '\'':
      return "\\(aq";
    case '`':
      return "\\(ga";
    case '^':
      return "\\(ha";
    case '~':
      return "\\(ti";
    default:
      return std::string(letter);
  }
}

/// Words in the text of a page, of which no line is taken for a request.
std::string set_words(std::string_view words) {
  std::string text;
  while (!words.empty()) {
    const CodePoint first = first_code_point(words);
    text += first.bytes == 1 ? set_letter(words.substr(0, 1))
                             : fmt::format("\\[u{:04X}]", static_cast<unsigned>(first.value));
    words.remove_prefix(first.bytes);
  }
  return text.starts_with('.') ? "\\&" + text : text;
}

std::string bold(std::string_view words) { return "\\fB" + set_words(words) + "\\fR"; }
std::string slanted(std::string_view words) { return "\\fI" + set_words(words) + "\\fR"; }

std::string section(std::string_view title, const std::string& text) {
  return text.empty() ? "" : fmt::format(".SH {}\n{}", title, text);
}

/// A line of its own, a paragraph after each empty one.
std::string set_paragraphs(std::string_view words) {
  constexpr std::string_view kBetween = "\n\n";
  const std::size_t end = words.find(kBetween);
  const std::string first = set_words(words.substr(0, end)) + '\n';
  return end == std::string_view::npos
             ? first
             : first + ".PP\n" + set_paragraphs(words.substr(end + kBetween.size()));
}

std::string tagged(const std::string& tag, const std::string& text) {
  return fmt::format(".TP\n{}\n{}\n", tag, text);
}

/// What is said of an option beyond its words.
std::string conditions(const OptionEntry& option) {
  std::string text;
  if (option.is_required) text += " It must be given.";
  if (!option.needs.empty()) text += fmt::format(" Only with {}.", enumerated(option.needs));
  if (!option.excludes.empty()) text += fmt::format(" Not with {}.", enumerated(option.excludes));
  return text;
}

std::string sentences_of(const OptionEntry& option) {
  const std::string& words = option.words;
  return set_words(words + (words.ends_with('.') ? "" : ".") + conditions(option));
}

std::string set_option(const OptionEntry& option) {
  std::vector<std::string> names;
  for (const std::string& name : option.names) names.push_back(bold(name));
  const std::string value = option.value.empty() ? "" : ' ' + slanted(option.value);
  return tagged(fmt::format("{}{}", fmt::join(names, ", "), value), sentences_of(option));
}

std::string set_arguments(const CommandEntry& command) {
  std::string text;
  for (const OptionEntry& argument : command.arguments) {
    OptionEntry said = argument;
    said.is_required = false;  // the synopsis says it
    text += tagged(slanted(argument.names.front()), sentences_of(said));
  }
  return text;
}

/// In the order of help, a heading over each group but the one that all options are in at first.
std::string set_options(const CommandEntry& command) {
  constexpr std::string_view kFirstGroup = "Options";
  std::vector<std::string_view> groups{kFirstGroup};
  for (const OptionEntry& option : command.options) {
    if (std::ranges::find(groups, option.group) == groups.end()) groups.push_back(option.group);
  }
  std::string text;
  for (const std::string_view group : groups) {
    if (group != kFirstGroup) text += fmt::format(".SS {}\n", set_words(group));
    for (const OptionEntry& option : command.options) {
      if (option.group == group) text += set_option(option);
    }
  }
  return text;
}

std::string set_commands(const ProgramTable& table) {
  std::string text;
  for (const CommandEntry& command : table.commands) {
    text +=
        tagged(bold(manual_name(table, command)) + "(1)", set_words(sentence_of(command.words)));
  }
  return text;
}

std::string set_statuses() {
  std::string text;
  for (const auto& [status, words] : status_meanings()) {
    text += tagged(bold(std::to_string(static_cast<int>(status))),
                   set_words(sentence_of(std::string(words))));
  }
  return text;
}

std::string set_examples(const std::vector<Example>& examples) {
  std::string text;
  for (const Example& example : examples) {
    if (!text.empty()) text += ".PP\n";
    if (!example.words.empty()) text += set_words(example.words) + "\n.PP\n";
    text += ".nf\n";
    for (const std::string& line : example.lines) text += set_words(line) + '\n';
    text += ".fi\n";
  }
  return text;
}

/// The other pages, the program's first.
std::string see_also(const ProgramTable& table, const std::string& name) {
  std::vector<std::string> pages;
  const auto add = [&](const std::string& page) {
    if (page != name) pages.push_back(bold(page) + "(1)");
  };
  add(table.program.name);
  for (const CommandEntry& command : table.commands) add(manual_name(table, command));
  return fmt::format("{}\n", fmt::join(pages, ",\n"));
}

/// Set to the left, as help is: between options there is too little text for straight edges.
std::string opening(const std::string& name, std::string_view words) {
  const std::string title =
      fmt::format(".TH {} 1 \"\" \"fingerturn {}\" \"User Commands\"\n", set_words(name), kVersion);
  return title + ".nh\n.ad l\n" +
         section("NAME", fmt::format("{} \\- {}\n", set_words(name), set_words(words)));
}

std::string closing(const ProgramTable& table, const std::string& name,
                    const std::vector<Example>& examples) {
  return section("EXIT STATUS", set_statuses()) + section("EXAMPLES", set_examples(examples)) +
         section("CAUTION", set_words(caution()) + '\n') +
         section("SEE ALSO", see_also(table, name));
}

/// "fingerturn scale [OPTIONS] [NAME...]", as help has it.
std::string synopsis(const ProgramTable& table, const CommandEntry& command) {
  std::string text =
      bold(table.program.name + ' ' + command.name) + " [" + slanted("OPTIONS") + ']';
  for (const OptionEntry& argument : command.arguments) {
    const std::string name = slanted(argument.names.front()) + (argument.is_repeated ? "..." : "");
    text += argument.is_required ? ' ' + name : " [" + name + ']';
  }
  return text + '\n';
}

}  // namespace

std::string manual_name(const ProgramTable& table, const CommandEntry& command) {
  return table.program.name + '-' + command.name;
}

std::string write_manual(const ProgramTable& table) {
  const CommandEntry& program = table.program;
  const std::string usage =
      bold(program.name) + " [" + slanted("OPTIONS") + "] " + slanted("COMMAND") + '\n';
  std::vector<Example> examples;
  for (const CommandEntry& command : table.commands) {
    std::ranges::move(parts_of_footer(command.footer).examples, std::back_inserter(examples));
  }
  return opening(program.name, "the technical analysis of fingered piano passages") +
         section("SYNOPSIS", usage) + section("DESCRIPTION", set_words(program_words()) + '\n') +
         section("COMMANDS", set_commands(table)) + section("OPTIONS", set_options(program)) +
         closing(table, program.name, examples);
}

std::string write_manual(const ProgramTable& table, const CommandEntry& command) {
  const std::string name = manual_name(table, command);
  const FooterParts footer = parts_of_footer(command.footer);
  const std::string words = sentence_of(command.words) + (footer.words.empty() ? "" : "\n\n");
  return opening(name, command.words) + section("SYNOPSIS", synopsis(table, command)) +
         section("DESCRIPTION", set_paragraphs(words + footer.words)) +
         section("ARGUMENTS", set_arguments(command)) + section("OPTIONS", set_options(command)) +
         closing(table, name, footer.examples);
}

}  // namespace fingerturn::cli
