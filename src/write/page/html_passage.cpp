#include "write/page/html_passage.hpp"

#include "fingerturn/rule.hpp"
#include "text/escape.hpp"
#include "text/numbers.hpp"
#include "text/words.hpp"
#include "write/page/html_frame.hpp"
#include "write/page/legend_line.hpp"
#include "write/page/places_map.hpp"
#include "write/shared/cues.hpp"
#include "write/shared/note_words.hpp"
#include "write/shared/passage_words.hpp"

#include <set>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

void add_heading(std::string& out, int level, std::string_view words) {
  add_element(out, fmt::format("h{}", level), words);
}

void add_totals(HtmlPage& page, const AnalysedPassage& passage, int level) {
  add_heading(page.out, level, "Totals");
  for (const LineAnalysis& line : passage.found().lines) {
    add_element(page.out, "p",
                fmt::format("{}: {}.", hand_heading(line.hand), totals_words(line.totals)));
  }
  for (std::string words : {full_swing_words(passage), together_words(passage)}) {
    if (!words.empty()) add_element(page.out, "p", sentence_of(std::move(words)));
  }
}

std::string_view open_word(const HtmlPage& page) { return page.unfolded ? " open=\"\"" : ""; }

void add_item(std::string& out, const WatchItem& item, bool names_hand) {
  const Finding& finding = *item.told.finding;
  std::string bars = bars_words(item.told.bars);
  if (!names_hand) bars.front() = 'B';
  out += fmt::format(
      R"(<li>{}{} <span class="grade">({})</span> {} <a href="#source-{}">{}</a></li>)",
      names_hand ? fmt::format("{}, ", hand_heading(item.hand)) : "", bars, name_of(finding.level),
      escaped_markup(item.told.message), finding.rule, finding.rule);
  out += '\n';
}

void add_items(std::string& out, std::string_view tag, const std::vector<WatchItem>& items,
               bool names_hand) {
  out += fmt::format("<{} class=\"watch\">\n", tag);
  for (const WatchItem& item : items) add_item(out, item, names_hand);
  out += fmt::format("</{}>\n", tag);
}

/// What asks for care, with the numbers that stand in the music, and what is for information.
void add_watch_list(HtmlPage& page, const AnalysedPassage& passage, const PageWatchList& list,
                    int level) {
  add_heading(page.out, level, "Watch list");
  if (list.items.empty()) {
    add_element(page.out, "p", "Nothing that asks for care was found.");
  } else {
    add_items(page.out, "ol", list.items, passage.size() > 1);
  }
  if (list.remarks.empty()) return;
  page.out += fmt::format("<details{}><summary>For information: {}</summary>\n", open_word(page),
                          list.remarks.size());
  add_items(page.out, "ul", list.remarks, passage.size() > 1);
  page.out += "</details>\n";
}

void add_study_row(HtmlPage& page, const AnalysedLine& line, const AnalysedEvent& event) {
  const auto& [written, entry] = event;
  page.out += fmt::format(R"(<tr><td>{}</td><th scope="row">{}</th><td>{}.</td>)", written.bar,
                          escaped_markup(event_words(line.written(), entry.event)),
                          escaped_markup(cue_of(entry, line.hand())));
  if (page.detail) {
    page.out += fmt::format("<td>{}</td>", escaped_markup(reason_with_suggestion(line, entry)));
  }
  page.out += "</tr>\n";
}

void add_study(HtmlPage& page, const AnalysedLine& line) {
  if (line.size() == 0) return;
  page.out += fmt::format(
      "<details{}><summary>{}: a cue{} for every note</summary>\n"
      R"(<table class="study"><thead><tr><th scope="col">bar</th><th scope="col">note</th>)"
      R"(<th scope="col">cue</th>{}</tr></thead>)"
      "<tbody>\n",
      open_word(page), hand_heading(line.hand()), page.detail ? " and the reason" : "",
      page.detail ? R"(<th scope="col">why</th>)" : "");
  for (const AnalysedEvent event : line) {
    add_study_row(page, line, event);
    page.hand_on();
  }
  page.out += "</tbody></table></details>\n";
}

}  // namespace

void add_passage_body(HtmlPage& page, const AnalysedPassage& passage, int level) {
  page.out += fmt::format("<p class=\"quiet head\"><span><bdi>{}</bdi></span>",
                          escaped_markup(head_line(passage)));
  if (const std::string words = full_swing_tempo_words(passage); !words.empty()) {
    page.out += fmt::format("<span>{}</span>", words);
  }
  page.out += "</p>\n";
  for (const std::string& sentence : opening_sentences(passage))
    add_element(page.out, "p", sentence);
  add_places_map(page.out, passage);
  if (has_no_places(passage)) return;
  const PageWatchList list = watch_list_of(passage);
  const std::vector<MusicPart> parts = music_parts(passage, list);
  if (parts.empty()) return;
  if (parts.size() > 1) add_element(page.out, "p", hands_apart_words());
  for (const MusicPart& part : parts) {
    if (parts.size() > 1) add_heading(page.out, level, hand_heading(part.lines.front().hand()));
    add_music(page, passage, part);
  }
  add_watch_list(page, passage, list, level);
  add_totals(page, passage, level);
  for (const AnalysedLine line : passage) add_study(page, line);
}

void add_legend(HtmlPage& page, const Used& used) {
  constexpr double kEmOfSpace = 0.55;
  page.out += "<section class=\"legend\" aria-label=\"Legend\">\n<ul>\n";
  for (const LegendDrawing& drawing : legend_drawings(used)) {
    page.out += fmt::format(R"(<li><svg class="music" aria-hidden="true" viewBox="0 0 {0} {1}" )"
                            R"(style="width:{2:.2f}em;height:{3:.2f}em">)",
                            drawing.width, drawing.height, drawing.width * kEmOfSpace,
                            drawing.height * kEmOfSpace);
    add_inks(page.out, drawing.inks, page.used, Repeats::references);
    page.out += fmt::format("</svg><span>{}</span></li>\n", escaped_markup(drawing.words));
  }
  page.out += "</ul>\n</section>\n";
}

void add_sources(HtmlPage& page, const AnalysedScore& analysed) {
  std::set<std::string_view> named;
  for (const PassageAnalysis& passage : analysed.found().passages) {
    for (const LineAnalysis& line : passage.lines) {
      for (const Finding& finding : line.watch) named.insert(finding.rule);
    }
  }
  if (named.empty()) return;
  page.out +=
      "<section class=\"sources\" aria-labelledby=\"sources\">\n<h2 id=\"sources\">Sources of the "
      "watch "
      "list</h2>\n<dl class=\"words\">\n";
  for (const Rule& rule : rules()) {
    if (!named.contains(rule.id)) continue;
    page.out += fmt::format("<dt id=\"source-{}\">{} ({})</dt>\n", rule.id,
                            escaped_markup(rule.title), rule.id);
    add_element(page.out, "dd", rule.sources);
  }
  page.out += "</dl>\n</section>\n";
}

}  // namespace fingerturn
