#include "cli/commands/explain.hpp"

#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "cli/terminal.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/rule.hpp"
#include "text/lower_case.hpp"
#include "text/nearest_word.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

ExitStatus show(std::string_view text) {
  Output output("");
  output.open({});
  output.write(text);
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
}

/// The rules whose title or id contains a word, in capitals or not.
std::vector<const Rule*> rules_about(const std::string& word) {
  constexpr std::size_t kShortestWord = 3;
  std::vector<const Rule*> about;
  if (word.size() < kShortestWord) return about;
  const std::string wanted = lower_case(word);
  for (const Rule& rule : rules()) {
    const bool is_about = lower_case(rule.title).find(wanted) != std::string::npos ||
                          rule.id.find(wanted) != std::string_view::npos;
    if (is_about) about.push_back(&rule);
  }
  return about;
}

/// "see side-changes (Single rotation)".
std::string see(const std::vector<const Rule*>& about) {
  constexpr std::size_t kMostNamed = 5;
  std::string words = "see ";
  for (std::size_t i = 0; i < about.size() && i < kMostNamed; ++i) {
    words += fmt::format("{}{} ({})", i > 0 ? ", " : "", about[i]->id, about[i]->title);
  }
  return about.size() > kMostNamed ? words + " and others" : words;
}

/// Which rule may be meant where none has this name.
std::string hint_for(const std::string& wanted) {
  const std::vector<const Rule*> about = rules_about(wanted);
  if (!about.empty()) return see(about);
  std::vector<std::string_view> ids;
  for (const Rule& rule : rules()) ids.push_back(rule.id);
  const std::string_view nearest = nearest_word(wanted, ids);
  return nearest.empty() ? "\"fingerturn explain\" lists them"
                         : fmt::format("did you mean \"{}\"?", nearest);
}

ExitStatus refuse(const std::string& wanted) {
  say(fmt::format("there is no rule \"{}\"; {}", wanted, hint_for(wanted)));
  return ExitStatus::wrong_usage;
}

}  // namespace

ExitStatus explain(const ExplainOptions& options) {
  constexpr int kWidestForReading = 100;
  const int columns = std::clamp(terminal_columns(), kFewestColumns, kWidestForReading);
  if (options.markdown) return show(write_rules_page());
  if (options.rule.empty()) return show(write_rule_list(columns));
  const Rule* rule = find_rule(options.rule);
  return rule == nullptr ? refuse(options.rule) : show(write_rule(*rule, columns));
}

}  // namespace fingerturn::cli
