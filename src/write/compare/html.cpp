#include "fingerturn/compare.hpp"
#include "text/escape.hpp"
#include "text/words.hpp"
#include "write/compare/agreement.hpp"
#include "write/compare/blocks.hpp"
#include "write/compare/differing_bars.hpp"
#include "write/compare/legend.hpp"
#include "write/compare/names.hpp"
#include "write/compare/table.hpp"
#include "write/page/html_frame.hpp"
#include "write/page/html_passage.hpp"
#include "write/shared/passage_words.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/core.h>

/// A comparison for the stand: what each fingering comes to, and the bars that differ on one staff
/// with a ribbon for each fingering.
namespace fingerturn {
namespace {

std::string header_cells(std::size_t fingerings) {
  std::string cells;
  for (std::size_t i = 0; i < fingerings; ++i) {
    cells += fmt::format(R"(<th scope="col">{}</th>)", fingering_label(i));
  }
  return cells;
}

void add_names(std::string& out, std::span<const NamedPassage> fingerings) {
  out += "<dl class=\"words names\">\n";
  for (std::size_t i = 0; i < fingerings.size(); ++i) {
    out += fmt::format("<dt>{}</dt><dd><bdi>{}</bdi></dd>\n", fingering_label(i),
                       escaped_markup(shown_name(fingerings[i].name, fingerings[i].passage)));
  }
  out += "</dl>\n";
}

void add_results(std::string& out, const HandComparison& hand) {
  out += fmt::format(
      R"(<table class="figures"><thead><tr><th scope="col">{}</th>{}</tr></thead><tbody>)",
      hand_heading(hand.hand), header_cells(hand.results.size()));
  out += '\n';
  for (const ResultsRow& row : results_rows(hand)) {
    out += fmt::format(R"(<tr><th scope="row">{}</th>)", row.label);
    for (const std::string& cell : row.cells) out += fmt::format("<td>{}</td>", cell);
    out += "</tr>\n";
  }
  out += "</tbody></table>\n";
}

void add_agreement_table(std::string& out, std::span<const AgreementRow> rows) {
  out += R"(<table class="figures"><thead><tr>)";
  for (const std::string_view head : kAgreementHead) {
    out += fmt::format(R"(<th scope="col">{}</th>)", head);
  }
  out += "</tr></thead><tbody>\n";
  for (const auto& [label, events, fingers, turns] : rows) {
    out += fmt::format(R"(<tr><th scope="row">{}</th><td>{}</td><td>{}</td><td>{}</td></tr>)",
                       label, events, fingers, turns);
    out += '\n';
  }
  out += "</tbody></table>\n";
}

void add_agreement(std::string& out, const Comparison& comparison) {
  std::vector<AgreementRow> rows;
  for (const HandComparison& hand : comparison.hands) {
    rows.push_back(agreement_rows(hand).front());
  }
  add_agreement_table(out, rows);
}

/// The bars are behind a fold, so that the music stays near.
void add_agreement_of_bars(std::string& out, const HandComparison& hand) {
  const std::vector<AgreementRow> rows = agreement_rows(hand);
  if (rows.size() == 1) return;
  out += fmt::format("<details><summary>{}: agreement, bar by bar</summary>\n",
                     hand_heading(hand.hand));
  add_agreement_table(out, std::span(rows).subspan(1));
  out += "</details>\n";
}

void add_place(std::string& out, std::int32_t bar, const Entry& entry) {
  out += fmt::format(R"(<tr><td>{}</td><td>{}</td><th scope="row">{}</th>)", bar, entry.beat,
                     escaped_markup(entry.notes));
  for (const Parts& parts : entry.played) {
    out += fmt::format("<td>{}</td>", escaped_markup(way_words(parts)));
  }
  out += "</tr>\n";
}

/// Every place that differs in words, for those who do not see the ribbons.
void add_places(HtmlPage& page, const HandComparison& hand) {
  if (hand.differing.empty()) return;
  page.out += fmt::format(
      "<details><summary>{}: where they differ, note for note</summary>\n"
      R"(<table class="study"><thead><tr><th scope="col">bar</th><th scope="col">beat</th>)"
      R"(<th scope="col">note</th>{}</tr></thead><tbody>)"
      "\n",
      hand_heading(hand.hand), header_cells(hand.lines.size()));
  for (const DifferingEvent& event : hand.differing) {
    add_place(page.out, event.bar, entry_for(hand, event, kUnicodeSigns));
    page.hand_on();
  }
  page.out += "</tbody></table></details>\n";
}

std::string ranges_words(const std::vector<BarRange>& ranges) {
  std::vector<std::string> words;
  words.reserve(ranges.size());
  for (const BarRange& range : ranges) words.push_back(to_string(range));
  return enumerated(words);
}

void add_staves(HtmlPage& page, const DifferingBars& bars) {
  const std::vector<BarRange>& alike = bars.alike();
  if (!alike.empty()) {
    add_element(page.out, "p", sentence_of(ranges_words(alike) + ": played alike, not shown"));
  }
  for (const RibbonsOfHands& hands : ribbons_in_parts(bars.passage().written(), bars.hands())) {
    add_ribbons(page, bars.passage(), hands);
  }
}

void add_comparison(HtmlPage& page, const Comparison& comparison, Used& used) {
  const AnalysedPassage first = comparison.fingerings.front().passage;
  page.out += fmt::format("<p class=\"quiet head\"><span><bdi>{}</bdi></span></p>\n",
                          escaped_markup(head_line(first)));
  add_names(page.out, comparison.fingerings);
  if (comparison.hands.empty()) return add_element(page.out, "p", "Nothing is played here.");
  page.out += "<div class=\"side\">\n";
  for (const HandComparison& hand : comparison.hands) add_results(page.out, hand);
  add_agreement(page.out, comparison);
  page.out += "</div>\n";
  if (comparison.all_alike()) return add_element(page.out, "p", all_alike_words(comparison));
  const DifferingBars bars(comparison);
  add_staves(page, bars);
  for (const HandComparison& hand : comparison.hands) {
    add_agreement_of_bars(page.out, hand);
    add_places(page, hand);
  }
  for (const std::vector<AnalysedLine>& ribbons : bars.hands()) {
    for (const AnalysedLine& line : ribbons) used.see(line, bars.passage().found());
  }
}

void add_totals_legend(std::string& out, std::span<const Comparison> comparisons) {
  out += "<section class=\"legend\" aria-label=\"What the figures are\">\n";
  for (const LegendEntry& entry : comparison_legend(comparisons)) {
    if (entry.label == "totals" || entry.label == "agreement") add_element(out, "p", entry.words);
  }
  out += "</section>\n";
}

}  // namespace

std::string write_comparison_html(std::span<const Comparison> comparisons) {
  return text_of(0, [&](TextOut& out) {
    const bool is_one = comparisons.size() == 1;
    const std::string_view title =
        is_one ? title_of(comparisons.front()) : std::string_view("Fingerings compared");
    const TextSink sink = [&](std::string_view piece) { out.add(piece); };
    HtmlPage page{{sink, page_head(title)}, {}};
    page.out += "<main>\n";
    Used used;
    for (const Comparison& comparison : comparisons) {
      if (!is_one) {
        page.out += fmt::format("<section class=\"passage\">\n<h2><bdi>{}</bdi></h2>\n",
                                escaped_markup(title_of(comparison)));
      }
      add_comparison(page, comparison, used);
      if (!is_one) page.out += "</section>\n";
    }
    add_legend(page, used);
    add_totals_legend(page.out, comparisons);
    end_page(page);
  });
}

}  // namespace fingerturn
