#include "cli/commands.hpp"
#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "cli/terminal.hpp"
#include "fingerturn/diagnostic_code.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/rule.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

/// What the command line of `explain` asks for.
struct ExplainOptions {
  std::string name;       ///< of a rule or a message; empty for the list of all
  bool messages = false;  ///< messages only
  bool markdown = false;  ///< all rules, or all messages, as one Markdown page
};

ExitStatus show(std::string_view text) {
  Output output("");
  output.open({});
  output.write(text);
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
}

/// What a rule or a message is found by.
struct Entry {
  std::string_view id;
  std::string_view title;
};

std::vector<Entry> all_entries() {
  std::vector<Entry> entries;
  for (const Rule& rule : rules()) entries.push_back({rule.id, rule.title});
  for (const DiagnosticCode& code : diagnostic_codes()) entries.push_back({code.id, code.title});
  return entries;
}

/// Those whose title or id contains a word, in capitals or not.
std::vector<Entry> entries_about(const std::string& word, std::vector<Entry> entries) {
  constexpr std::size_t kShortestWord = 3;
  if (word.size() < kShortestWord) return {};
  const std::string wanted = lower_case(word);
  std::erase_if(entries, [&wanted](const Entry& entry) {
    return lower_case(entry.title).find(wanted) == std::string::npos &&
           entry.id.find(wanted) == std::string_view::npos;
  });
  return entries;
}

/// "see side-changes (Single rotation)".
std::string see(const std::vector<Entry>& about) {
  constexpr std::size_t kMostNamed = 5;
  std::string words = "see ";
  for (std::size_t i = 0; i < about.size() && i < kMostNamed; ++i) {
    words += fmt::format("{}{} ({})", i > 0 ? ", " : "", about[i].id, about[i].title);
  }
  return about.size() > kMostNamed ? words + " and others" : words;
}

/// What may be meant where nothing has this name.
std::string hint_for(const std::string& wanted) {
  const std::vector<Entry> entries = all_entries();
  const std::vector<Entry> about = entries_about(wanted, entries);
  if (!about.empty()) return see(about);
  std::vector<std::string_view> ids;
  ids.reserve(entries.size());
  for (const Entry& entry : entries) ids.push_back(entry.id);
  const std::string_view nearest = nearest_word(wanted, ids);
  return nearest.empty() ? "\"fingerturn explain\" lists them"
                         : fmt::format("did you mean \"{}\"?", nearest);
}

ExitStatus refuse_name(const std::string& wanted) {
  say(fmt::format("there is no rule or message \"{}\"; {}", wanted, hint_for(wanted)));
  return ExitStatus::wrong_usage;
}

std::string page_of(const ExplainOptions& options) {
  return options.messages ? write_messages_page() : write_rules_page();
}

std::string list_of(const ExplainOptions& options, int columns) {
  if (options.messages) return write_message_list(columns);
  return write_rule_list(columns) + "\nmessages\n" + write_message_list(columns);
}

/// A rule and a message may share a name; then it is both.
std::string words_of(const ExplainOptions& options, int columns) {
  const Rule* rule = options.messages ? nullptr : find_rule(options.name);
  const DiagnosticCode* code = find_diagnostic_code(options.name);
  std::string words = rule != nullptr ? write_rule(*rule, columns) : "";
  if (rule != nullptr && code != nullptr) words += '\n';
  return code != nullptr ? words + write_message(*code, columns) : words;
}

/// A rule or a message in words.
ExitStatus explain(const ExplainOptions& options) {
  constexpr int kWidestForReading = 100;
  const int columns = std::clamp(terminal_columns(), kFewestColumns, kWidestForReading);
  if (options.markdown) return show(page_of(options));
  if (options.name.empty()) return show(list_of(options, columns));
  const std::string words = words_of(options, columns);
  return words.empty() ? refuse_name(options.name) : show(words);
}

}  // namespace

Command add_explain(CLI::App& program) {
  CLI::App* line = program.add_subcommand("explain", "Put a rule or a message into words");
  const auto options = std::make_shared<ExplainOptions>();
  line->add_option("NAME", options->name, "A rule or a message; without it, all are listed")
      ->type_name("");
  line->add_flag("--messages", options->messages, "Look among the messages only");
  line->add_flag("--markdown", options->markdown,
                 "Write all rules, or with --messages all messages, as one page");
  line->footer(
      "A name such as leap stands in watch lists and in what check finds; JSON names\n"
      "the rule for every note. What is wrong with a file ends with a name in brackets,\n"
      "such as [finger-range]. A word from a title shows what it is about.");
  return {line, [options] { return explain(*options); }};
}

}  // namespace fingerturn::cli
