#include "cli/annotate.hpp"

#include "cli/finger.hpp"
#include "cli/input.hpp"
#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "fingerturn/fingerturn.hpp"

#include <algorithm>
#include <utility>

namespace fingerturn::cli {
namespace {

/// Cuts the score down to the passage and hand that were asked for.
std::optional<Score> chosen_part(Score score, const std::string& name,
                                 const AnnotateOptions& options) {
  if (options.passage) {
    const auto number = static_cast<std::size_t>(*options.passage);
    if (number > score.passages.size()) {
      say(name + ": there is no passage " + std::to_string(number) + ", the last is " +
          std::to_string(score.passages.size()));
      return std::nullopt;
    }
    Passage chosen = std::move(score.passages[number - 1]);
    score.passages.clear();
    score.passages.push_back(std::move(chosen));
  }
  return options.hand ? only_hand(std::move(score), *options.hand) : std::move(score);
}

bool has_event(const Analysis& analysis) {
  return std::any_of(analysis.passages.begin(), analysis.passages.end(), [](const auto& passage) {
    return std::any_of(passage.lines.begin(), passage.lines.end(),
                       [](const LineAnalysis& line) { return !line.events.empty(); });
  });
}

/// `document` is the text that the score was read from.
std::string report_text(const Report& report, const Source& document,
                        const AnnotateOptions& options) {
  switch (options.format) {
    case Format::json:
      return write_json(report);
    case Format::jsonl:
      return write_jsonl(report);
    case Format::musicxml:
      return write_musicxml(document, report, {options.words || options.ascii});
    case Format::svg:
      return write_svg(report);
    case Format::html:
      return write_html(report);
    case Format::markdown:
      return write_markdown(report, {.detail = options.detail, .cues = options.cues});
    case Format::text:
    case Format::passage:
      break;
  }
  TextStyle style;
  style.columns = options.columns.value_or(terminal_columns());
  style.ascii = options.ascii;
  style.detail = options.detail;
  style.cues = options.cues;
  style.colour =
      options.output.empty() ? wants_colour(options.colour) : options.colour == Colour::always;
  return write_text(report, style);
}

std::string result_text(const std::string& name, const Score& score, const Source& document,
                        const AnnotateOptions& options) {
  if (options.format == Format::passage) {
    return write_passage(options.bars ? only_bars(score, *options.bars) : score);
  }
  Analysis analysis = analyse(score, options.analysis);
  if (options.bars) analysis = only_bars(std::move(analysis), score, *options.bars);
  if (!has_event(analysis) && (options.bars || options.hand)) {
    say(name + ": nothing is played in the part that was chosen");
  }
  return report_text({name, score, analysis}, document, options);
}

Score with_missing_fingers(Score score, const AnnotateOptions& options) {
  if (!options.suggest) return score;
  return with_fingerings(
      score, {options.analysis.reach_semitones, static_cast<std::size_t>(options.fingerings)});
}

/// Does one input.
ExitStatus annotate_input(const std::string& path, const AnnotateOptions& options, bool first,
                          Output& output) {
  const std::optional<Source> source = read_input(path);
  if (!source) return ExitStatus::input_failed;
  if (options.format == Format::musicxml && form_of(*source) == SourceForm::notation) {
    say(source->name() + ": --format musicxml writes into a MusicXML score, and this is none");
    return ExitStatus::wrong_usage;
  }
  ReadResult result = read(*source, {options.hand, options.part});
  say_text(render(text_read(result, *source), result.diagnostics));
  if (!result.ok()) return ExitStatus::input_failed;
  std::optional<Score> score = chosen_part(std::move(result.score), source->name(), options);
  if (!score) return ExitStatus::wrong_usage;
  score = with_missing_fingers(std::move(*score), options);
  const bool parted = options.format == Format::text || options.format == Format::passage;
  if (parted && !first) output.write("\n");
  output.write(result_text(source->name(), *score, text_read(result, *source), options));
  return ExitStatus::done;
}

}  // namespace

ExitStatus annotate(const AnnotateOptions& options) {
  if (std::count(options.inputs.begin(), options.inputs.end(), "-") > 1) {
    say("standard input can be read once only");
    return ExitStatus::wrong_usage;
  }
  if (options.format == Format::musicxml && options.inputs.size() > 1) {
    say("--format musicxml takes one score at a time, and gives it back");
    return ExitStatus::wrong_usage;
  }
  if (options.format == Format::musicxml && options.fingerings > 1) {
    say("--format musicxml gives a score back, which has room for one fingering");
    return ExitStatus::wrong_usage;
  }
  Output output(options.output);
  if (!output.open(options.inputs)) return ExitStatus::wrong_usage;
  bool any_done = false;
  ExitStatus worst = ExitStatus::done;
  for (const std::string& path : options.inputs) {
    const ExitStatus status = annotate_input(path, options, !any_done, output);
    any_done |= status == ExitStatus::done;
    worst = std::max(worst, status);
  }
  if (any_done && !output.finish()) return ExitStatus::wrong_usage;
  return worst;
}

}  // namespace fingerturn::cli
