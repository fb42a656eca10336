#include "cli/commands/annotate.hpp"

#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "cli/pages.hpp"
#include "cli/score_input.hpp"
#include "fingerturn/fingerturn.hpp"

#include <algorithm>
#include <utility>

namespace fingerturn::cli {
namespace {

/// `document` is the text that the score was read from.
std::string report_text(const AnalysedScore& analysed, const Source& document,
                        const AnnotateOptions& options) {
  switch (options.format) {
    case Format::json:
      return write_json(analysed);
    case Format::jsonl:
      return write_jsonl(analysed);
    case Format::musicxml:
      return write_musicxml(document, analysed, {options.words || options.ascii});
    case Format::html:
    case Format::svg:
    case Format::markdown:
      return page_text(analysed, options);
    case Format::text:
    case Format::passage:
      break;
  }
  return write_text(analysed, text_style(options));
}

std::string result_text(ScoreInput input, const AnnotateOptions& options) {
  if (options.format == Format::passage) {
    return write_passage(options.bars ? only_bars(input.score, *options.bars) : input.score);
  }
  AnalysedScore analysed = analysed_and_said(input.name, std::move(input.score), options);
  // The other forms do not tell it, and it would slow down those who do not ask for it.
  const bool is_json = options.format == Format::json || options.format == Format::jsonl;
  if (options.suggest && is_json) analysed = with_difficulties(std::move(analysed));
  return report_text(analysed, *input.document, options);
}

/// One input after another into one output.
ExitStatus write_in_turn(const AnnotateOptions& options) {
  Output output(options.output);
  if (!output.open(options.inputs)) return ExitStatus::wrong_usage;
  const bool parted = options.format == Format::text || options.format == Format::passage;
  bool any_done = false;
  ExitStatus worst = ExitStatus::done;
  for (const std::string& path : options.inputs) {
    ScoreInput input = read_score(path, options);
    worst = std::max(worst, input.status);
    if (input.status != ExitStatus::done) continue;
    if (parted && any_done) output.write("\n");
    output.write(result_text(std::move(input), options));
    any_done = true;
  }
  if (any_done && !output.finish()) return ExitStatus::wrong_usage;
  return worst;
}

}  // namespace

TextStyle text_style(const AnnotateOptions& options) {
  TextStyle style;
  style.columns = options.columns.value_or(terminal_columns());
  style.ascii = options.ascii;
  style.detail = options.detail;
  style.cues = options.cues;
  style.trace = options.trace;
  style.colour =
      options.output.empty() ? wants_colour(options.colour) : options.colour == Colour::always;
  return style;
}

bool can_read_inputs(const AnnotateOptions& options) {
  if (std::count(options.inputs.begin(), options.inputs.end(), "-") <= 1) return true;
  say("standard input can be read once only");
  return false;
}

ExitStatus annotate(const AnnotateOptions& options) {
  if (!can_read_inputs(options)) return ExitStatus::wrong_usage;
  if (options.format == Format::musicxml && options.inputs.size() > 1) {
    say("--format musicxml takes one score at a time, and gives it back");
    return ExitStatus::wrong_usage;
  }
  if (options.format == Format::musicxml && options.fingerings > 1) {
    say("--format musicxml gives a score back, which has room for one fingering");
    return ExitStatus::wrong_usage;
  }
  return goes_on_pages(options.format) ? write_pages(options) : write_in_turn(options);
}

}  // namespace fingerturn::cli
