#include "fingerturn/report.hpp"
#include "text/utf8.hpp"
#include "text/wrap.hpp"
#include "write/shared/passage_words.hpp"
#include "write/text/columns.hpp"
#include "write/text/foot.hpp"
#include "write/text/grid.hpp"
#include "write/text/head.hpp"
#include "write/text/signs.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace fingerturn {
namespace {

std::string head_text(const Report& report, const Passage& passage, const PassageAnalysis& analysis,
                      const TextStyle& style) {
  std::string text = title_line(title_of(report, passage), style);
  text += joined_lines(head_parts(passage, analysis, report.analysis.bars), style);
  for (const std::string& remark : passage.remarks) {
    text += wrapped("", printable(remark), style.columns);
  }
  return text;
}

/// The notes with their rows: both hands above one another, or one after the other where it is
/// not known which notes sound together.
std::string notes_text(const Report& report, const Passage& passage, const ShownLines& lines,
                       const TextStyle& style) {
  if (lines.size() < 2 || all_onsets_known(passage)) {
    return draw_systems(lines, columns_of(passage, lines, report.analysis.bars), style);
  }
  std::string text = "\n" + wrapped("",
                                    "Not all note values are known, so the hands stand one "
                                    "after the other.",
                                    style.columns);
  for (const ShownLine& line : lines) {
    text += draw_systems({line}, columns_of(passage, {line}, report.analysis.bars), style);
  }
  return text;
}

std::string passage_text(const Report& report, std::size_t number, const TextStyle& style) {
  const Passage& passage = report.score.passages[number];
  const ShownLines lines = shown_lines(passage, report.analysis.passages[number]);
  std::string text = head_text(report, passage, report.analysis.passages[number], style);
  if (lines.empty()) return text;
  text += notes_text(report, passage, lines, style);
  if (style.detail || style.cues) {
    for (const ShownLine& line : lines) {
      text += '\n' + reasons_text(*line.line, *line.analysis, style);
    }
  }
  text += '\n' + emphasised("totals", Emphasis::strong, style.colour) + '\n';
  for (const ShownLine& line : lines) text += totals_text(*line.analysis, style);
  text += together_text(passage, report.analysis.passages[number], style);
  return text + watch_text(lines, style);
}

}  // namespace

std::string write_text(const Report& report, const TextStyle& style) noexcept {
  if (style.columns < kFewestColumns) {
    TextStyle wider = style;
    wider.columns = kFewestColumns;
    return write_text(report, wider);
  }
  std::string text;
  for (std::size_t i = 0; i < report.score.passages.size(); ++i) {
    if (i > 0) text += '\n';
    text += passage_text(report, i, style);
  }
  const std::string legend = legend_text(report, style);
  if (!legend.empty()) {
    text += '\n' + emphasised("legend", Emphasis::strong, style.colour) + '\n' + legend;
  }
  text += '\n' + emphasised("caution", Emphasis::strong, style.colour) + '\n';
  text += wrapped("", caution(), style.columns);
  return report.score.passages.empty() ? text.substr(1) : text;
}

}  // namespace fingerturn
