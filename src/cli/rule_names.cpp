#include "cli/rule_names.hpp"

#include "fingerturn/diagnostic_code.hpp"
#include "fingerturn/rule.hpp"
#include "text/words.hpp"

#include <fmt/core.h>

namespace fingerturn::cli {

std::string hint_for_name(std::string_view wanted) {
  std::vector<std::string_view> names;
  for (const Rule& rule : rules()) names.push_back(rule.id);
  for (const DiagnosticCode& code : diagnostic_codes()) names.push_back(code.id);
  // What is no name but is answered all the same, as it stands in titles.
  for (const std::string_view word :
       {"single", "double", "preparatory", "undetermined", "octave"}) {
    names.push_back(word);
  }
  const std::string_view nearest = nearest_word(wanted, names);
  return nearest.empty() ? "\"fingerturn explain\" lists them"
                         : fmt::format("did you mean \"{}\"?", nearest);
}

std::vector<std::string> names_meant(const std::string& name) {
  if (find_rule(name) != nullptr || find_diagnostic_code(name) != nullptr) return {name};
  std::vector<std::string> names;
  for (const Rule* rule : rules_of_section(name)) names.emplace_back(rule->id);
  return names;
}

}  // namespace fingerturn::cli
