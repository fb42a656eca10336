#include "cli/formats.hpp"

#include "fingerturn/fingerturn.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

namespace fingerturn::cli {
namespace {

/// What was found in the notes that were asked for.
AnalysedScore analysed(ScoreInput input, const ReportOptions& options) {
  AnalysedScore shown = cli::analysed(std::move(input.name), std::move(input.score), options.player,
                                      options.notes.bars);
  return options.places ? only_places(std::move(shown)) : std::move(shown);
}

/// For pages, which can name what comes again; fingerings side by side show what differs as it is.
AnalysedScore analysed_for_page(ScoreInput input, const ReportOptions& options) {
  AnalysedScore shown = analysed(std::move(input), options);
  const bool names = options.look.once && options.fingers.alternatives < 2;
  return names ? with_repeats_named(std::move(shown)) : std::move(shown);
}

/// With the difficulties where alternatives are told from one another by them.
AnalysedScore with_difficulty_told(AnalysedScore shown, const ReportOptions& options) {
  return options.fingers.alternatives > 1 ? with_difficulties(std::move(shown)) : std::move(shown);
}

using Writer = void (*)(const AnalysedScore& analysed, const TextSink& sink);

template <Writer write>
void plain(ScoreInput input, const ReportOptions& options, const TextSink& sink) {
  write(analysed(std::move(input), options), sink);
}

/// For formats that tell how difficult suggested fingers are; it would slow the others down.
template <Writer write>
void with_difficulty(ScoreInput input, const ReportOptions& options, const TextSink& sink) {
  AnalysedScore of = analysed(std::move(input), options);
  write(options.fingers.suggest ? with_difficulties(std::move(of)) : std::move(of), sink);
}

void text(ScoreInput input, const ReportOptions& options, const TextSink& sink) {
  write_text(analysed(std::move(input), options), text_style(options.look, options.output), sink);
}

/// Fingerings of the same notes are shown by what differs, where there are several of each passage.
std::vector<Comparison> alternatives_in(const AnalysedScore& analysed,
                                        const ReportOptions& options) {
  if (options.fingers.alternatives < 2) return {};
  std::vector<Comparison> comparisons = compare_neighbours(analysed);
  const bool any_alone = std::ranges::any_of(
      comparisons, [](const Comparison& each) { return each.fingerings.size() < 2; });
  return any_alone ? std::vector<Comparison>() : comparisons;
}

void html(ScoreInput input, const ReportOptions& options, const TextSink& sink) {
  const ReportLook& look = options.look;
  const PageStyle style{.unfolded = look.detail || look.cues,
                        .detail = look.detail,
                        .index = std::move(input.index),
                        .music = {.keys = look.keys}};
  const AnalysedScore shown =
      with_difficulty_told(analysed_for_page(std::move(input), options), options);
  const std::vector<Comparison> alternatives = alternatives_in(shown, options);
  alternatives.empty() ? write_html(shown, style, sink) : sink(write_comparison_html(alternatives));
}

void svg(ScoreInput input, const ReportOptions& options, const TextSink& sink) {
  const SheetStyle style{.paper = options.look.paper, .music = {.keys = options.look.keys}};
  write_svg(analysed_for_page(std::move(input), options), style, sink);
}

void markdown(ScoreInput input, const ReportOptions& options, const TextSink& sink) {
  const ReportLook& look = options.look;
  const AnalysedScore shown = with_difficulty_told(analysed(std::move(input), options), options);
  const std::vector<Comparison> alternatives = alternatives_in(shown, options);
  if (!alternatives.empty()) return sink(write_comparison_markdown(alternatives));
  write_markdown(shown, {.detail = look.detail, .cues = look.cues}, sink);
}

void passage(ScoreInput input, const ReportOptions& options, const TextSink& sink) {
  const std::optional<BarRange>& bars = options.notes.bars;
  sink(write_passage(bars ? only_bars(std::move(input.score), *bars) : std::move(input.score)));
}

void musicxml(ScoreInput input, const ReportOptions& options, const TextSink& sink) {
  const MusicXmlStyle style{.words = options.look.words || options.look.text.ascii};
  const std::optional<Source> document = std::move(input.document);
  const AnalysedScore shown = analysed(std::move(input), options);
  sink(form_of(*document) == SourceForm::notation ? write_musicxml(shown, style)
                                                  : write_musicxml(*document, shown, style));
}

template <IndexOf what>
std::string html_index(std::span<const PageLink> links) {
  return write_html_index(links, what);
}

constexpr Pages kHtmlPages{"html", "html", html_index<IndexOf::pages>};
constexpr Pages kPictures{"svg", "html", html_index<IndexOf::pictures>};
constexpr Pages kMarkdownPages{"md", "md", write_markdown_index};

constexpr std::array kFormats{
    Format{.name = "text", .purpose = "to read", .write = text, .parted = true},
    Format{.name = "html", .purpose = "to hand out", .write = html, .pages = kHtmlPages},
    Format{.name = "svg", .purpose = "for the picture alone", .write = svg, .pages = kPictures},
    Format{.name = "markdown",
           .purpose = "for study notes",
           .write = markdown,
           .pages = kMarkdownPages},
    Format{.name = "json", .purpose = "for programs", .write = with_difficulty<write_json>},
    Format{.name = "jsonl", .purpose = "for programs", .write = with_difficulty<write_jsonl>},
    Format{.name = "passage",
           .purpose = "to write the notation anew",
           .write = passage,
           .parted = true,
           .tells_places = false},
    Format{.name = "musicxml",
           .purpose = "for a score with the analysis under its notes, a MusicXML score given back",
           .write = musicxml,
           .is_score = true},
};

}  // namespace

std::span<const Format> formats() noexcept { return kFormats; }

}  // namespace fingerturn::cli
