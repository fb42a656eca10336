#include "fingerturn/report.hpp"
#include "text/utf8.hpp"
#include "text/wrap.hpp"
#include "write/shared/passage_words.hpp"
#include "write/text/columns.hpp"
#include "write/text/foot.hpp"
#include "write/text/grid.hpp"
#include "write/text/head.hpp"
#include "write/text/signs.hpp"
#include "write/text/watch.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

std::string head_text(const AnalysedScore& analysed, const AnalysedPassage& passage,
                      const TextStyle& style) {
  std::string text = title_line(title_of(analysed, passage.written()), style);
  text += joined_lines(head_parts(passage), style);
  for (const std::string& remark : passage.written().remarks) {
    text += wrapped("", printable(remark), style.columns);
  }
  return text;
}

/// The notes with their rows: both hands above one another, or one after the other where it is
/// not known which notes sound together.
std::string notes_text(const AnalysedPassage& passage, const TextStyle& style) {
  const SharedLines lines = lines_of(passage);
  if (lines.size() < 2 || all_onsets_known(passage.written())) {
    return draw_systems(lines, columns_of(passage, lines), style);
  }
  std::string text = "\n" + wrapped("",
                                    "Not all note values are known, so the hands stand one "
                                    "after the other.",
                                    style.columns);
  for (const AnalysedLine& line : lines) {
    text += draw_systems({line}, columns_of(passage, {line}), style);
  }
  return text;
}

std::string passage_text(const AnalysedScore& analysed, const AnalysedPassage& passage,
                         const TextStyle& style) {
  std::string text = head_text(analysed, passage, style);
  if (passage.size() == 0) return text;
  text += notes_text(passage, style);
  if (style.detail || style.cues) {
    for (const AnalysedLine line : passage) text += '\n' + reasons_text(line, style);
  }
  text += '\n' + emphasised("totals", Emphasis::strong, style.colour) + '\n';
  for (const AnalysedLine line : passage) text += totals_text(line.found(), style);
  return text + together_text(passage, style) + watch_text(passage, style);
}

}  // namespace

std::string write_text(const AnalysedScore& analysed, const TextStyle& style) {
  if (style.columns < kFewestColumns) {
    TextStyle wider = style;
    wider.columns = kFewestColumns;
    return write_text(analysed, wider);
  }
  std::string text;
  for (const AnalysedPassage passage : analysed) {
    if (!text.empty()) text += '\n';
    text += passage_text(analysed, passage, style);
  }
  const std::string legend = legend_text(analysed, style);
  if (!legend.empty()) {
    text += '\n' + emphasised("legend", Emphasis::strong, style.colour) + '\n' + legend;
  }
  text += '\n' + emphasised("caution", Emphasis::strong, style.colour) + '\n';
  text += wrapped("", caution(), style.columns);
  return analysed.size() == 0 ? text.substr(1) : text;
}

}  // namespace fingerturn
