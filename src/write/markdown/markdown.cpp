#include "fingerturn/report.hpp"
#include "text/escape.hpp"
#include "text/text_out.hpp"
#include "write/markdown/part.hpp"
#include "write/markdown/tables.hpp"
#include "write/shared/cues.hpp"
#include "write/shared/note_words.hpp"
#include "write/shared/passage_words.hpp"
#include "write/shared/told_once.hpp"
#include "write/text/legend.hpp"

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/core.h>

/// Notes to keep: Markdown as CommonMark has it, with tables. Every text that is not a sign of the
/// form itself is escaped.
namespace fingerturn {
namespace {

void add_section(std::string& out, int level, std::string_view words) {
  out += fmt::format("\n{} {}\n\n", std::string(static_cast<std::size_t>(level), '#'),
                     escaped_markdown(words));
}

void add_item(std::string& out, std::string_view label, std::string_view words) {
  if (!words.empty()) out += fmt::format("- {}: {}\n", label, escaped_markdown(words));
}

void add_totals(std::string& out, const AnalysedPassage& passage, int level) {
  add_section(out, level, "Totals");
  for (const LineAnalysis& line : passage.found().lines) {
    add_item(out, hand_heading(line.hand), totals_words(line.totals));
  }
  add_item(out, "Tempo", full_swing_words(passage));
  add_item(out, "Together", together_words(passage));
}

void add_watch_list(std::string& out, const AnalysedPassage& passage, int level) {
  std::set<std::string_view> named;
  std::string list;
  for (const AnalysedLine line : passage) {
    for (const ToldOnce& told : told_once(line).entries) {
      const Finding& finding = *told.finding;
      named.insert(finding.rule);
      list += fmt::format("- {}, {}, **{}**: {} (`{}`)\n", hand_heading(line.hand()),
                          bars_words(told.bars), name_of(finding.level),
                          escaped_markdown(told.message), finding.rule);
    }
  }
  if (list.empty()) return;
  add_section(out, level, "Watch list");
  out += list + "\nSources:\n\n";
  for (const Rule& rule : rules()) {
    if (named.contains(rule.id)) {
      out += fmt::format("- `{}`: {}\n", rule.id, escaped_markdown(rule.sources));
    }
  }
}

void add_sentences(TextFlow& flow, const AnalysedLine& line, const MarkdownStyle& style,
                   int level) {
  std::string& out = flow.out;
  add_section(out, level, fmt::format("{}, note for note", hand_heading(line.hand())));
  std::optional<std::int32_t> bar;
  for (const auto& [event, entry] : line) {
    if (bar != event.bar) out += fmt::format("{}Bar {}:\n\n", bar ? "\n" : "", event.bar);
    bar = event.bar;
    out += fmt::format("- **{}**", escaped_markdown(event_words(line.written(), entry.event)));
    if (style.cues) out += fmt::format(" {}.", escaped_markdown(cue_of(entry, line.hand())));
    if (style.detail) out += ' ' + escaped_markdown(reason_with_suggestion(line, entry));
    out += '\n';
    flow.hand_on();
  }
}

void add_passage(TextFlow& flow, const AnalysedPassage& passage, const MarkdownStyle& style,
                 int level) {
  std::string& out = flow.out;
  out += escaped_markdown(head_line(passage)) + '\n';
  for (const std::string& sentence : opening_sentences(passage)) {
    out += '\n' + escaped_markdown(sentence) + '\n';
  }
  if (has_no_places(passage)) return;
  const std::vector<PagePart> parts = page_parts(passage);
  if (parts.size() > 1) out += '\n' + escaped_markdown(hands_apart_words()) + '\n';
  for (const PagePart& part : parts) {
    if (parts.size() > 1) add_section(out, level, hand_heading(part.lines.front().hand()));
    add_tables(flow, part);
  }
  if (parts.empty()) return;
  add_totals(out, passage, level);
  add_watch_list(out, passage, level);
  if (!style.detail && !style.cues) return;
  for (const AnalysedLine line : passage) add_sentences(flow, line, style, level);
}

void add_passages(TextFlow& flow, const AnalysedScore& analysed, const MarkdownStyle& style) {
  std::string& out = flow.out;
  std::size_t number = 0;
  for (const Passage& passage : analysed.written().passages) {
    out += fmt::format("{}. {}\n", ++number, escaped_markdown(title_of(analysed, passage)));
  }
  for (const AnalysedPassage passage : analysed) {
    add_section(out, 2, title_of(analysed, passage.written()));
    add_passage(flow, passage, style, 3);
  }
}

}  // namespace

std::string write_markdown(const AnalysedScore& analysed, const MarkdownStyle& style) {
  return text_of(0, [&](TextOut& out) {
    write_markdown(analysed, style, [&](std::string_view piece) { out.add(piece); });
  });
}

void write_markdown(const AnalysedScore& analysed, const MarkdownStyle& style,
                    const TextSink& sink) {
  TextFlow flow{sink, fmt::format("# {}\n\n", escaped_markdown(title_of(analysed)))};
  if (analysed.size() == 1) {
    add_passage(flow, analysed[0], style, 2);
  } else {
    add_passages(flow, analysed, style);
  }
  add_legend(flow.out, legend_of(analysed));
  add_section(flow.out, 2, "Caution");
  flow.out += escaped_markdown(caution()) + '\n';
  flow.finish();
}

std::string write_markdown_index(std::span<const PageLink> links) {
  std::string out = "# Contents\n\n";
  for (std::size_t i = 0; i < links.size(); ++i) {
    out +=
        fmt::format("{}. [{}]({})\n", i + 1, escaped_markdown(links[i].title), links[i].file_name);
  }
  add_section(out, 2, "Caution");
  return out + escaped_markdown(caution()) + '\n';
}

}  // namespace fingerturn
