#include "cli/score_input.hpp"

#include "cli/finger.hpp"
#include "cli/input.hpp"
#include "cli/messages.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/read.hpp"

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

Score with_missing_fingers(Score score, const AnnotateOptions& options) {
  if (!options.suggest) return score;
  return with_fingerings(
      score, {options.analysis.reach_semitones, static_cast<std::size_t>(options.fingerings)});
}

ScoreInput failed(ExitStatus status) { return {status, {}, {}, {}}; }

}  // namespace

ScoreInput read_score(const std::string& path, const AnnotateOptions& options) {
  std::optional<Source> source = read_input(path);
  if (!source) return failed(ExitStatus::input_failed);
  if (options.format == Format::musicxml && form_of(*source) == SourceForm::notation) {
    say(source->name() + ": --format musicxml writes into a MusicXML score, and this is none");
    return failed(ExitStatus::wrong_usage);
  }
  ReadResult result = read(*source, {options.hand, options.part});
  say_text(render(text_read(result, *source), result.diagnostics));
  if (!result.ok()) return failed(ExitStatus::input_failed);
  std::optional<Score> score = chosen_part(std::move(result.score), source->name(), options);
  if (!score) return failed(ExitStatus::wrong_usage);
  std::string name = source->name();
  if (result.unpacked) source = std::move(result.unpacked);
  return {ExitStatus::done, std::move(name), with_missing_fingers(std::move(*score), options),
          std::move(source)};
}

Analysis analysis_of(const std::string& name, const Score& score, const AnnotateOptions& options) {
  Analysis analysis = analyse(score, options.analysis);
  if (options.bars) analysis = only_bars(std::move(analysis), score, *options.bars);
  if (!has_event(analysis) && (options.bars || options.hand)) {
    say(name + ": nothing is played in the part that was chosen");
  }
  // The other forms do not tell it, and it would slow down those who do not ask for it.
  const bool is_json = options.format == Format::json || options.format == Format::jsonl;
  if (options.suggest && is_json) return with_difficulties(std::move(analysis), score);
  return analysis;
}

}  // namespace fingerturn::cli
