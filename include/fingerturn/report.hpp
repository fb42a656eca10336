#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/score.hpp"

#include <string>
#include <string_view>

/// Writers: each takes finished results and returns text. They compute nothing of their own, and
/// the same input gives the same bytes. All text is UTF-8 and ends with a line feed.
///
///     Report report{"warmup.passage", score, analysis};
///     std::cout << write_text(report, TextStyle{.columns = 60});
namespace fingerturn {

/// A score, its analysis and the name it came under. The score and the analysis must outlive it.
struct Report {
  std::string_view source_name;
  const Score& score;
  const Analysis& analysis;
};

/// How the text report looks.
struct TextStyle {
  int columns = 80;     ///< the width to keep to; less than kFewestColumns counts as that
  bool ascii = false;   ///< no character beyond ASCII except in titles
  bool detail = false;  ///< each event's reason
  bool cues = false;    ///< each event in a short line for practising
  bool colour = false;  ///< terminal colours
};
inline constexpr int kFewestColumns = 32;

/// The caution that stands in every report.
std::string_view caution() noexcept;

/// The report for the music stand.
std::string write_text(const Report& report, const TextStyle& style) noexcept;
/// One JSON document, described by docs/analysis.schema.json.
std::string write_json(const Report& report) noexcept;
/// A JSON document of one line for each passage, of the same form.
std::string write_jsonl(const Report& report) noexcept;
/// The passage notation: reading it back gives an equal score.
std::string write_passage(const Score& score) noexcept;

/// A rule, or the list of all rules, for the terminal, `columns` wide.
std::string write_rule(const Rule& rule, int columns) noexcept;
std::string write_rule_list(int columns) noexcept;
/// All rules as the page docs/rules.md.
std::string write_rules_page() noexcept;

}  // namespace fingerturn
