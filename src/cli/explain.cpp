#include "cli/explain.hpp"

#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "cli/terminal.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/rule.hpp"
#include "model/nearest_word.hpp"

#include <algorithm>
#include <string_view>
#include <vector>

namespace fingerturn::cli {
namespace {

ExitStatus show(std::string_view text) {
  Output output("");
  output.open({});
  output.write(text);
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
}

ExitStatus refuse(const std::string& wanted) {
  std::vector<std::string_view> ids;
  for (const Rule& rule : rules()) ids.push_back(rule.id);
  const std::string_view nearest = nearest_word(wanted, ids);
  say("there is no rule \"" + wanted + "\"" +
      (nearest.empty() ? "; \"fingerturn explain\" lists them"
                       : "; did you mean \"" + std::string(nearest) + "\"?"));
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
