#include "cli/score_input.hpp"

#include "cli/input.hpp"
#include "cli/messages.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/read.hpp"

#include <algorithm>
#include <cstddef>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

constexpr std::string_view kNoPassage = "there is no passage in it";

/// Cuts the score down to the passage and hand that were asked for.
std::optional<Score> chosen_part(Score score, const std::string& name,
                                 const AnnotateOptions& options) {
  if (options.passage) {
    const auto number = static_cast<std::size_t>(*options.passage);
    if (number > score.passages.size()) {
      say(fmt::format("{}: {}", name,
                      score.passages.empty() ? std::string(kNoPassage)
                                             : fmt::format("there is no passage {}, the last is {}",
                                                           number, score.passages.size())));
      return std::nullopt;
    }
    Passage chosen = std::move(score.passages[number - 1]);
    score.passages.clear();
    score.passages.push_back(std::move(chosen));
  }
  return options.hand ? only_hand(std::move(score), *options.hand) : std::move(score);
}

bool has_event(const AnalysedScore& analysed) {
  for (const AnalysedPassage passage : analysed) {
    for (const AnalysedLine line : passage) {
      if (line.size() > 0) return true;
    }
  }
  return false;
}

constexpr std::size_t kMostNamed = 8;

/// "bars 1 to 4, bar 9": the bars of a passage, in runs.
std::string bars_words(const Passage& passage) {
  std::vector<BarRange> runs;
  for (const std::int32_t bar : bars_of(passage)) {
    if (runs.empty() || runs.back().last + 1 != bar) runs.push_back({bar, bar});
    runs.back().last = bar;
  }
  if (runs.empty()) return "no bars";
  std::string words;
  for (std::size_t i = 0; i < runs.size() && i < kMostNamed; ++i) {
    words += (i > 0 ? ", " : "") + to_string(runs[i]);
  }
  return runs.size() > kMostNamed ? words + " and more" : words;
}

/// "; there are bars 1 to 12", or what each of several passages has.
std::string bars_there_are(const Score& score) {
  if (score.passages.size() == 1) return "; there are " + bars_words(score.passages.front());
  std::string words;
  for (std::size_t p = 0; p < score.passages.size() && p < kMostNamed; ++p) {
    words += fmt::format("; passage {} has {}", p + 1, bars_words(score.passages[p]));
  }
  const std::size_t named = std::min(score.passages.size(), kMostNamed);
  return named < score.passages.size()
             ? fmt::format("{}; {} more passages", words, score.passages.size() - named)
             : words;
}

Score with_missing_fingers(Score score, const AnnotateOptions& options) {
  if (!options.suggest) return score;
  return with_fingerings(
      score, {options.analysis.reach_semitones, static_cast<std::size_t>(options.fingerings)},
      options.bars);
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

void say_nothing_is_played(const std::string& name, const Score& score,
                           const AnnotateOptions& options) {
  if (score.passages.empty()) return say(name + ": " + std::string(kNoPassage));
  const std::string hand =
      options.hand ? fmt::format(" by the {} hand", to_string(*options.hand)) : "";
  const std::string bars = options.bars ? " in " + to_string(*options.bars) : "";
  say(fmt::format("{}: nothing is played{}{}{}", name, hand, bars,
                  options.bars ? bars_there_are(score) : ""));
}

AnalysedScore analysed(std::string name, Score score, const AnnotateOptions& options) {
  AnalysedScore whole(std::move(name), std::move(score), options.analysis);
  return options.bars ? only_bars(std::move(whole), *options.bars) : whole;
}

AnalysedScore analysed_and_said(std::string name, Score score, const AnnotateOptions& options) {
  AnalysedScore of = analysed(std::move(name), std::move(score), options);
  const bool is_part = options.bars || options.hand;
  if (is_part && !has_event(of)) say_nothing_is_played(of.name(), of.written(), options);
  return of;
}

}  // namespace fingerturn::cli
