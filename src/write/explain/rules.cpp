#include "fingerturn/report.hpp"
#include "fingerturn/rule.hpp"
#include "text/wrap.hpp"
#include "write/explain/widest_id.hpp"

#include <string>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// The chapter of docs/rules.md that begins with this section, empty where none does.
std::string_view chapter_before(std::string_view section) {
  if (section == "1.1") return "1. What is looked at";
  if (section == "2.1") return "2. How the forearm turns";
  if (section == "3.1") return "3. How fingers pass one another";
  if (section == "4.1") return "4. The rest of the arm";
  if (section == "5.1") return "5. What to watch";
  if (section == "6.1") return "6. Tempo";
  return {};
}

}  // namespace

std::string write_rule(const Rule& rule, int columns) {
  std::string text = fmt::format("{} {} ({})\n\n", rule.section, rule.title, rule.id);
  text += wrapped("  ", rule.words, columns);
  text += '\n';
  return text + wrapped("  Source: ", rule.sources, columns);
}

std::string write_rule_list(int columns) {
  std::string text;
  for (const Rule& rule : rules()) {
    const std::string opening =
        fmt::format("{}  {}  ", rule.section, padded(rule.id, widest_id(rules())));
    text += wrapped(opening, rule.title, columns);
  }
  return text;
}

std::string write_rules_page() {
  constexpr int kPageColumns = 100;
  std::string text = "# The rules\n\n";
  text += wrapped("",
                  "Reports in JSON name the rule that decided how each note turns; watch lists and "
                  "`check` name the rule that found something. This page states all rules, each "
                  "with its source. `fingerturn explain` prints the same, rule by rule, and this "
                  "page is written by `fingerturn explain --markdown`. Where a rule has no "
                  "published source it says \"common practice, no source\" or \"our "
                  "convention\".",
                  kPageColumns);
  for (const Rule& rule : rules()) {
    const std::string_view chapter = chapter_before(rule.section);
    if (!chapter.empty()) text += fmt::format("\n## {}\n", chapter);
    text += fmt::format("\n### {} {} (`{}`)\n\n", rule.section, rule.title, rule.id);
    text += wrapped("", rule.words, kPageColumns);
    text += '\n' + wrapped("", fmt::format("*Source:* {}", rule.sources), kPageColumns);
  }
  return text + "\n## Caution\n\n" + wrapped("", caution(), kPageColumns);
}

}  // namespace fingerturn
