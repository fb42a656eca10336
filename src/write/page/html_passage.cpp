#include "write/page/html_passage.hpp"

#include "fingerturn/rule.hpp"
#include "text/escape.hpp"
#include "text/words.hpp"
#include "write/page/picture_legend.hpp"
#include "write/page/svg_picture.hpp"
#include "write/shared/cues.hpp"
#include "write/shared/note_words.hpp"
#include "write/shared/passage_words.hpp"
#include "write/text/legend.hpp"

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

void add_finding(std::string& out, const AnalysedLine& line, const Finding& finding,
                 bool names_hand) {
  out += fmt::format(
      R"(<li>{} {} <span class="level">({})</span> {} [<a href="#source-{}">{}</a>]</li>)",
      names_hand ? fmt::format("{}, bar", hand_heading(line.hand())) : "Bar",
      line.event_of(finding).bar, name_of(finding.level), escaped_markup(finding.message),
      finding.rule, finding.rule);
  out += '\n';
}

void add_watch_list(HtmlPage& page, const AnalysedPassage& passage, int level) {
  std::string list;
  for (const AnalysedLine line : passage) {
    for (const Finding& finding : line.found().watch) {
      add_finding(list, line, finding, passage.size() > 1);
    }
  }
  add_heading(page.out, level, "Watch list");
  if (list.empty()) {
    add_element(page.out, "p", "Nothing to watch was found.");
  } else {
    page.out += "<ul class=\"watch\">\n" + list + "</ul>\n";
  }
}

void add_reason(std::string& out, const AnalysedLine& line, const AnalysedEvent& event) {
  const auto& [written, entry] = event;
  out += fmt::format(
      R"(<tr><td>{}</td><td class="name">{}</td><td><span class="cue">{}.</span> {}</td></tr>)",
      written.bar, escaped_markup(event_words(line.written(), entry.event)),
      escaped_markup(cue_of(entry, line.hand())), escaped_markup(reason_of(entry, line.hand())));
  out += '\n';
}

void add_reasons(HtmlPage& page, const AnalysedLine& line) {
  if (line.size() == 0) return;
  page.out += fmt::format(
      "<details{}><summary>{}: a cue and the reason for every note</summary>\n"
      R"(<table class="reasons"><thead><tr><th scope="col">bar</th><th scope="col">note</th>)"
      "<th scope=\"col\">how and why</th></tr></thead><tbody>\n",
      page.unfolded ? " open=\"\"" : "", hand_heading(line.hand()));
  for (const AnalysedEvent event : line) {
    add_reason(page.out, line, event);
    page.hand_on();
  }
  page.out += "</tbody></table></details>\n";
}

/// Rows of the text report that the page does not have, or explains beside its samples.
bool is_explained(std::string_view label) {
  static const std::set<std::string_view> kExplained{"rotation", "forearm", "crossing"};
  return kExplained.contains(label);
}

}  // namespace

void add_element(std::string& out, std::string_view tag, std::string_view text) {
  out += fmt::format("<{0}>{1}</{0}>\n", tag, escaped_markup(text));
}

void add_passage_body(HtmlPage& page, const AnalysedPassage& passage, int level) {
  page.out +=
      fmt::format("<p class=\"quiet\"><bdi>{}</bdi></p>\n", escaped_markup(head_line(passage)));
  for (const std::string& sentence : opening_sentences(passage))
    add_element(page.out, "p", sentence);
  if (has_no_places(passage)) return;
  const std::vector<PagePart> parts = page_parts(passage);
  if (parts.empty()) return;
  if (parts.size() > 1) add_element(page.out, "p", hands_apart_words());
  for (const PagePart& part : parts) {
    if (parts.size() > 1) add_heading(page.out, level, hand_heading(part.lines.front().hand()));
    add_systems(page, part);
  }
  add_totals(page, passage, level);
  add_watch_list(page, passage, level);
  for (const AnalysedLine line : passage) add_reasons(page, line);
}

void add_legend(HtmlPage& page, const AnalysedScore& analysed) {
  page.out += "<section aria-labelledby=\"legend\">\n<h2 id=\"legend\">Legend</h2>\n";
  page.out += "<ul class=\"samples\">\n";
  for (const LegendSample& sample : picture_legend(analysed)) {
    page.out += "<li>";
    add_sample(page.out, sample,
               fmt::format(R"( style="width:{:.2f}em;height:{:.2f}em")", kSampleWidth / 12,
                           sample_height(sample) / 12));
    page.out += fmt::format("<span>{}</span></li>\n", escaped_markup(sample.words));
  }
  page.out += "</ul>\n<div class=\"words\">\n";
  for (const std::string_view note : picture_notes(analysed)) add_element(page.out, "p", note);
  std::string list;
  for (const LegendEntry& entry : legend_of(analysed)) {
    if (is_explained(entry.label)) continue;
    if (!entry.label.empty()) add_element(list, "dt", entry.label);
    add_element(list, "dd", entry.words);
  }
  if (!list.empty()) page.out += "<dl class=\"rows\">\n" + list + "</dl>\n";
  page.out += "</div>\n</section>\n";
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
      "<section aria-labelledby=\"sources\">\n<h2 id=\"sources\">Sources of the watch "
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
