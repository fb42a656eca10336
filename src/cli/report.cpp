#include "cli/report.hpp"

#include "cli/input.hpp"
#include "cli/messages.hpp"
#include "fingerturn/fingerturn.hpp"

#include <cstddef>
#include <optional>
#include <utility>

namespace fingerturn::cli {
namespace {

/// `document` is the text that the score was read from.
std::string written(const AnalysedScore& analysed, const std::optional<Source>& document,
                    const ReportOptions& options) {
  const ReportLook& look = options.look;
  switch (options.format) {
    case Format::json:
      return write_json(analysed);
    case Format::jsonl:
      return write_jsonl(analysed);
    case Format::musicxml:
      return write_musicxml(*document, analysed, {look.words || look.text.ascii});
    case Format::html:
      return write_html(analysed, {.unfolded = look.detail || look.cues});
    case Format::svg:
      return write_svg(analysed);
    case Format::markdown:
      return write_markdown(analysed, {.detail = look.detail, .cues = look.cues});
    case Format::text:
    case Format::passage:
      break;
  }
  return write_text(analysed, text_style(look, options.output));
}

}  // namespace

ScoreInput read_to_report(const std::string& path, const ReportOptions& options) {
  std::optional<Source> source = read_input(path);
  ScoreInput input;
  if (!source) {
    input.status = ExitStatus::input_failed;
  } else if (options.format == Format::musicxml && form_of(*source) == SourceForm::notation) {
    say(source->name() + ": --format musicxml writes into a MusicXML score, and this is none");
    input.status = ExitStatus::wrong_usage;
  } else {
    input = read_score(std::move(*source), options.notes);
  }
  if (!options.fingers.suggest) return input;
  const auto alternatives = static_cast<std::size_t>(options.fingers.alternatives);
  input.score = with_fingerings(input.score, {options.player.reach_semitones, alternatives},
                                options.notes.bars);
  return input;
}

std::string report_text(ScoreInput input, const ReportOptions& options) {
  if (options.format == Format::passage) {
    return write_passage(options.notes.bars ? only_bars(input.score, *options.notes.bars)
                                            : input.score);
  }
  const std::optional<Source> document = std::move(input.document);
  AnalysedScore analysed = analysed_and_said(std::move(input), options.player, options.notes);
  // The other forms do not tell it, and it would slow down those who do not ask for it.
  const bool is_json = options.format == Format::json || options.format == Format::jsonl;
  if (options.fingers.suggest && is_json) {
    analysed = with_difficulties(std::move(analysed));
  }
  return written(analysed, document, options);
}

bool goes_on_pages(Format format) noexcept {
  return format == Format::html || format == Format::svg || format == Format::markdown;
}

}  // namespace fingerturn::cli
