#include "fingerturn/report.hpp"
#include "text/text_out.hpp"
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
#include <string_view>

#include <fmt/core.h>

namespace fingerturn {
namespace {

std::string head_text(const AnalysedScore& analysed, const AnalysedPassage& passage,
                      const TextStyle& style) {
  std::string text = title_line(title_of(analysed, passage.written()), style);
  text += joined_lines(head_parts(passage), style);
  for (const std::string& sentence : opening_sentences(passage)) {
    text += wrapped("", printable(sentence), style.columns);
  }
  return text;
}

/// The notes with their rows: both hands above one another, or one after the other where it is
/// not known which notes sound together.
void add_notes(TextOut& out, const AnalysedPassage& passage, const TextStyle& style) {
  const std::vector<SharedLines> parts = lines_together(passage);
  if (parts.size() > 1) {
    out.add("\n" + wrapped("",
                           "Not all note values are known, so the hands stand one "
                           "after the other.",
                           style.columns));
  }
  for (const SharedLines& lines : parts) draw_systems(out, BarSequence(passage, lines), style);
}

std::string heading(std::string_view words, const TextStyle& style) {
  return '\n' + emphasised(words, Emphasis::strong, style.colour) + '\n';
}

/// How many events are struck, where none of them has a finger and not all are level; else 0.
std::size_t unfingered_events(const AnalysedPassage& passage) {
  std::size_t events = 0;
  bool any_unknown = false;
  for (const AnalysedLine line : passage) {
    any_unknown |= line.found().totals.undetermined > 0;
    for (const auto& [written, found] : line) {
      const bool any = std::ranges::any_of(
          written.notes, [](const Note& note) { return note.finger.has_value(); });
      if (any) return 0;
      ++events;
    }
  }
  return any_unknown ? events : 0;
}

/// Whether there is anything that a legend explains.
bool has_rows(const AnalysedScore& analysed) {
  // NOLINTNEXTLINE(readability-use-anyofallof): the views are made as they are gone through
  for (const AnalysedPassage passage : analysed) {
    if (unfingered_events(passage) == 0) return true;
  }
  return false;
}

void add_passage(TextOut& out, const AnalysedScore& analysed, const AnalysedPassage& passage,
                 const TextStyle& style) {
  out.add(head_text(analysed, passage, style));
  if (passage.size() == 0 || has_no_places(passage)) return;
  // Rows of question marks would say the same at length.
  if (const std::size_t events = unfingered_events(passage)) {
    const std::string words = fmt::format(
        "No finger is written at {} event{}, so no turn is known. Write fingers, or have some "
        "suggested: --suggest fills them in.",
        events == 1 ? "the one" : fmt::format("any of {}", events), events == 1 ? "" : "s");
    return out.add("\n" + wrapped("", words, style.columns));
  }
  add_notes(out, passage, style);
  if (style.detail || style.cues) {
    for (const AnalysedLine line : passage) {
      out.add('\n');
      add_reasons(out, line, style);
    }
  }
  out.add(heading("totals", style));
  for (const AnalysedLine line : passage) out.add(totals_text(line.found(), style));
  out.add(together_text(passage, style));
  out.add(watch_text(passage, style));
}

void add_text(TextOut& out, const AnalysedScore& analysed, const TextStyle& style) {
  bool is_first = true;
  for (const AnalysedPassage passage : analysed) {
    if (!is_first) out.add('\n');
    is_first = false;
    add_passage(out, analysed, passage, style);
  }
  if (style.brief) {
    out.add(analysed.size() == 0 ? "" : "\n");
    return out.add(labelled("caution", brief_caution(), style));
  }
  const std::string legend = has_rows(analysed) ? legend_text(legend_of(analysed), style) : "";
  if (!legend.empty()) out.add(heading("legend", style) + legend);
  const std::string caution_heading = heading("caution", style);
  out.add(std::string_view(caution_heading).substr(analysed.size() == 0 && legend.empty() ? 1 : 0));
  out.add(wrapped("", caution(), style.columns));
}

TextStyle no_narrower(TextStyle style) {
  style.columns = std::max(style.columns, kFewestColumns);
  return style;
}

}  // namespace

std::string write_text(const AnalysedScore& analysed, const TextStyle& style) {
  return text_of(0, [&](TextOut& out) { add_text(out, analysed, no_narrower(style)); });
}

void write_text(const AnalysedScore& analysed, const TextStyle& style, const TextSink& sink) {
  write_to(sink, [&](TextOut& out) { add_text(out, analysed, no_narrower(style)); });
}

}  // namespace fingerturn
