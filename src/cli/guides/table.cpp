#include "cli/guides/table.hpp"

#include "cli/paths.hpp"
#include "fingerturn/diagnostic_code.hpp"
#include "fingerturn/rule.hpp"
#include "fingerturn/scale.hpp"
#include "fingerturn/transpose.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <set>
#include <utility>

namespace fingerturn::cli {
namespace {

using Words = std::vector<std::string>;

constexpr const char* kRules = "rules";
constexpr const char* kScales = "scales";
constexpr const char* kTranspositions = "transpositions";

Words rule_names() {
  std::set<std::string> names;
  for (const Rule& rule : rules()) names.emplace(rule.id);
  for (const DiagnosticCode& code : diagnostic_codes()) names.emplace(code.id);
  return {names.begin(), names.end()};
}

/// The keys that have scales, and the intervals that are neither augmented nor diminished.
Words transpositions() {
  constexpr std::string_view kMajor = " major";
  constexpr std::array kIntervals{Interval{1, 1},  Interval{1, 2},  Interval{2, 3}, Interval{2, 4},
                                  Interval{3, 5},  Interval{4, 7},  Interval{5, 8}, Interval{5, 9},
                                  Interval{6, 10}, Interval{6, 11}, Interval{7, 12}};
  Words words;
  for (const std::string& name : handbook_scale_names()) {
    if (name.ends_with(kMajor))
      words.push_back("to " + name.substr(0, name.size() - kMajor.size()));
  }
  for (const Interval& interval : kIntervals) {
    words.push_back(to_string(interval));
    words.push_back(to_string(Interval{-interval.letters, -interval.semitones}));
  }
  return words;
}

Words parts_of(std::string_view text, char between) {
  Words parts;
  for (std::size_t begin = 0; begin <= text.size();) {
    const std::size_t end = std::min(text.find(between, begin), text.size());
    parts.emplace_back(text.substr(begin, end - begin));
    begin = end + 1;
  }
  return parts;
}

bool is_word(const std::string& part) { return !part.empty() && part[0] >= 'a' && part[0] <= 'z'; }

/// By what a value is called: small letters are a word to type, capitals say what stands for it.
KnownValues values_called(std::string name, bool is_argument) {
  constexpr std::string_view kRow = ",...";
  KnownValues values;
  values.is_row = name.ends_with(kRow);
  if (values.is_row) name.resize(name.size() - kRow.size());
  for (const std::string& part : parts_of(name, '|')) {
    const bool is_named_file = part == "FILE" || part == "PATH";
    if (is_word(part)) values.words.push_back(part);
    if (part == "RULE") values.list = kRules;
    if (part == "SCALE") values.list = kScales;
    if (part == "INTERVAL") values.list = kTranspositions;
    if (part == "PASSAGE" || (is_argument && is_named_file)) values.is_score = true;
    if (part == "LIST" || (!is_argument && is_named_file)) values.is_file = true;
  }
  return values;
}

Words names_of(const CLI::Option& option) {
  if (option.get_positional()) return {option.get_name(true)};
  Words names;
  for (const std::string& name : option.get_snames()) names.push_back("-" + name);
  for (const std::string& name : option.get_lnames()) names.push_back("--" + name);
  return names;
}

/// In the order of help, which that of a set of addresses is not.
Words names_among(const std::set<CLI::Option*>& some, const CLI::App& command) {
  Words names;
  for (const CLI::Option* option : command.get_options()) {
    const bool is_one = std::ranges::find(some, option) != some.end();
    if (is_one) names.push_back(names_of(*option).back());
  }
  return names;
}

OptionEntry entry_of(const CLI::Option& option, const CLI::App& command) {
  const bool is_argument = option.get_positional();
  const bool takes_value = option.get_items_expected_max() > 0;
  OptionEntry entry;
  entry.names = names_of(option);
  if (takes_value) entry.value = option.get_type_name();
  entry.words = option.get_description();
  entry.group = option.get_group();
  entry.needs = names_among(option.get_needs(), command);
  entry.excludes = names_among(option.get_excludes(), command);
  entry.is_required = option.get_required();
  const bool takes_all = option.get_multi_option_policy() == CLI::MultiOptionPolicy::TakeAll;
  entry.is_repeated = option.get_items_expected_max() > 1 || (takes_value && takes_all);
  entry.values = values_called(entry.value.empty() ? entry.names.back() : entry.value, is_argument);
  return entry;
}

CommandEntry entry_of(const CLI::App& command) {
  CommandEntry entry{command.get_name(), command.get_description(), {}, {}, command.get_footer()};
  for (const CLI::Option* option : command.get_options()) {
    // What belongs to no group is hidden from help as well.
    if (option->get_group().empty()) continue;
    auto& among = option->get_positional() ? entry.arguments : entry.options;
    among.push_back(entry_of(*option, command));
  }
  return entry;
}

}  // namespace

ProgramTable table_of(const CLI::App& program) {
  ProgramTable table;
  table.program = entry_of(program);
  for (const CLI::App* command : program.get_subcommands({})) {
    if (!command->get_group().empty()) table.commands.push_back(entry_of(*command));
  }
  table.lists = {{kRules, rule_names()},
                 {kScales, handbook_scale_names()},
                 {kTranspositions, transpositions()}};
  table.endings.assign(known_endings().begin(), known_endings().end());
  return table;
}

}  // namespace fingerturn::cli
