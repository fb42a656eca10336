#pragma once

#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

namespace fingerturn {

/// What a result rests on: `rule` where common practice or a cited source decides, `convention`
/// where a convention of this project does, `none` where it is undetermined.
enum class Basis : std::uint8_t { rule, convention, none };

/// A rule of the analysis in words. The texts live as long as the program.
struct Rule {
  std::string_view id;       ///< what reports and `explain` call it, such as "first-note"
  std::string_view section;  ///< its number in docs/rules.md, such as "2.3"
  std::string_view title;
  std::string_view words;    ///< what it says, for a pianist
  std::string_view sources;  ///< published sources, "common practice, no source", "our convention"
};

/// All rules in the order of docs/rules.md.
///
///     for (const Rule& rule : rules()) std::cout << rule.id << '\n';
std::span<const Rule> rules() noexcept;

/// The rule with this id; null where there is none.
const Rule* find_rule(std::string_view id) noexcept;

/// The rules of a section such as "2.4", or of a chapter such as "2".
std::vector<const Rule*> rules_of_section(std::string_view section);

}  // namespace fingerturn
