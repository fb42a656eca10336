#include "cli/commands.hpp"
#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "cli/rule_names.hpp"
#include "cli/terminal.hpp"
#include "fingerturn/diagnostic_code.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/rule.hpp"
#include "text/words.hpp"
#include "text/wrap.hpp"

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

ExitStatus show(std::string_view text) { return write_whole("", text); }

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

ExitStatus refuse_name(const std::string& wanted) {
  say(fmt::format("there is no rule or message \"{}\"; {}", wanted, hint_for_name(wanted)));
  return ExitStatus::wrong_usage;
}

std::string page_of(const ExplainOptions& options) {
  return options.messages ? write_messages_page() : write_rules_page();
}

std::string list_of(const ExplainOptions& options, int columns) {
  if (options.messages) return write_message_list(columns);
  return write_rule_list(columns) + "\nmessages\n" + write_message_list(columns);
}

/// What is told of a name: rules and messages in full, others by their names.
struct Answer {
  std::vector<const Rule*> rules;
  std::vector<const DiagnosticCode*> codes;
  std::vector<Entry> others;
};

/// Whether a word of a text begins with these words, in capitals or not.
bool tells_of(std::string_view text, std::string_view wanted) {
  const std::string lower = lower_case(text);
  for (std::size_t at = lower.find(wanted); at != std::string::npos;
       at = lower.find(wanted, at + 1)) {
    if (at == 0 || lower[at - 1] < 'a' || lower[at - 1] > 'z') return true;
  }
  return false;
}

/// Titles and names that have the words, and the rules that speak of them.
Answer answer_about(const std::string& name, bool messages_only) {
  Answer answer;
  for (const Entry& entry : entries_about(name, all_entries())) {
    const Rule* rule = messages_only ? nullptr : find_rule(entry.id);
    if (rule != nullptr && rule->title == entry.title) answer.rules.push_back(rule);
    const DiagnosticCode* code = find_diagnostic_code(entry.id);
    if (code != nullptr && code->title == entry.title) answer.codes.push_back(code);
  }
  constexpr std::size_t kShortestWord = 4;
  if (messages_only || name.size() < kShortestWord) return answer;
  const std::string wanted = lower_case(name);
  const bool none_by_title = answer.rules.empty();
  for (const Rule& rule : rules()) {
    const bool known =
        std::find(answer.rules.begin(), answer.rules.end(), &rule) != answer.rules.end();
    if (known || !tells_of(rule.words, wanted)) continue;
    if (none_by_title) {
      answer.rules.push_back(&rule);
    } else {
      answer.others.push_back({rule.id, rule.title});
    }
  }
  return answer;
}

/// The message of a name, and what speaks of it: in full where that is little.
Answer answer_with(const DiagnosticCode& code, const Answer& about) {
  constexpr std::size_t kFew = 3;
  Answer answer;
  answer.codes.push_back(&code);
  answer.others = about.others;
  if (about.rules.size() <= kFew) {
    answer.rules = about.rules;
  } else {
    for (const Rule* rule : about.rules) answer.others.push_back({rule->id, rule->title});
  }
  for (const DiagnosticCode* other : about.codes) {
    if (other != &code) answer.others.push_back({other->id, other->title});
  }
  return answer;
}

/// A rule and a message may share a name; then it is both.
Answer answer_to(const ExplainOptions& options) {
  const Rule* rule = options.messages ? nullptr : find_rule(options.name);
  const DiagnosticCode* code = find_diagnostic_code(options.name);
  if (rule != nullptr || (code != nullptr && options.messages)) {
    Answer answer;
    if (rule != nullptr) answer.rules.push_back(rule);
    if (code != nullptr) answer.codes.push_back(code);
    return answer;
  }
  if (!options.messages) {
    if (auto found = rules_of_section(options.name); !found.empty()) return {found, {}, {}};
  }
  Answer about = answer_about(options.name, options.messages);
  return code == nullptr ? about : answer_with(*code, about);
}

/// What is found in words, the first few in full.
std::string words_of(Answer answer, int columns) {
  constexpr std::size_t kMostInFull = 20;
  std::string words;
  std::size_t told = 0;
  for (const Rule* rule : answer.rules) {
    if (++told > kMostInFull) answer.others.push_back({rule->id, rule->title});
    if (told <= kMostInFull) words += (words.empty() ? "" : "\n") + write_rule(*rule, columns);
  }
  for (const DiagnosticCode* code : answer.codes) {
    if (++told > kMostInFull) answer.others.push_back({code->id, code->title});
    if (told <= kMostInFull) words += (words.empty() ? "" : "\n") + write_message(*code, columns);
  }
  if (answer.others.empty()) return words;
  std::string others;
  for (const Entry& entry : answer.others) {
    others += fmt::format("{}{} ({})", others.empty() ? "" : ", ", entry.id, entry.title);
  }
  return words + '\n' + wrapped("See also ", others, columns);
}

/// A rule or a message in words.
ExitStatus explain(const ExplainOptions& options) {
  constexpr int kWidestForReading = 100;
  const int columns = std::clamp(terminal_columns(), kFewestColumns, kWidestForReading);
  if (options.markdown) return show(page_of(options));
  if (options.name.empty()) return show(list_of(options, columns));
  const std::string words = words_of(answer_to(options), columns);
  return words.empty() ? refuse_name(options.name) : show(words);
}

}  // namespace

Command add_explain(CLI::App& program) {
  CLI::App* line = program.add_subcommand("explain", "Put a rule or a message into words");
  const auto options = std::make_shared<ExplainOptions>();
  line->add_option("NAME", options->name,
                   "A rule, its section as in 2.4, a message, or words they have; without it, all "
                   "are listed")
      ->type_name("RULE");
  line->add_flag("--messages", options->messages, "Look among the messages only");
  line->add_flag("--markdown", options->markdown,
                 "Write all rules, or with --messages all messages, as one page");
  line->footer(
      "A name such as leap stands in watch lists and in what check finds; JSON names\n"
      "the rule for every note. What is wrong with a file ends with a name in brackets,\n"
      "such as [finger-range]. Other words show the rules and messages that have them.");
  return {line, [options] { return explain(*options); }};
}

}  // namespace fingerturn::cli
