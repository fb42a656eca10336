#include "cli/score_input.hpp"

#include "cli/input.hpp"
#include "cli/messages.hpp"
#include "fingerturn/read.hpp"

#include <algorithm>
#include <cstddef>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace fingerturn::cli {

ScoreInput failed(ExitStatus status) { return {status, {}, {}, {}}; }

namespace {

constexpr std::string_view kNoPassage = "there is no passage in it";

/// Cuts the score down to the passage and hand that were asked for.
std::optional<Score> chosen_part(Score score, const std::string& name, const ChosenNotes& notes) {
  if (notes.passage) {
    const auto number = static_cast<std::size_t>(*notes.passage);
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
  return notes.hand ? only_hand(std::move(score), *notes.hand) : std::move(score);
}

/// Whether there are notes in the part that was asked for.
bool is_played(const Score& score, const std::optional<BarRange>& bars) {
  const auto has_notes = [&bars](const Event& event) {
    return !event.is_rest() && (!bars || bars->contains(event.bar));
  };
  return std::any_of(score.passages.begin(), score.passages.end(), [&](const Passage& passage) {
    return std::any_of(passage.lines.begin(), passage.lines.end(), [&](const Line& line) {
      return std::any_of(line.events.begin(), line.events.end(), has_notes);
    });
  });
}

/// In the key, or the keys, that were asked for. What was read is no document of that any more.
ScoreInput transposed(ScoreInput input, const ChosenNotes& notes) {
  Transposed moved = in_chosen_key(input.score, notes);
  if (!moved.problem.empty()) {
    say(fmt::format("{}: {}", input.name, moved.problem));
    return failed(ExitStatus::wrong_usage);
  }
  input.score = std::move(moved.score);
  input.document = Source(input.name + ".passage", "");
  return input;
}

constexpr std::size_t kMostNamed = 8;

/// The bars of a passage, neighbours together.
std::vector<BarRange> runs_of_bars(const Passage& passage) {
  std::vector<BarRange> runs;
  for (const std::int32_t bar : bars_of(passage)) {
    if (runs.empty() || runs.back().last + 1 != bar) runs.push_back({bar, bar});
    runs.back().last = bar;
  }
  return runs;
}

/// "bars 1 to 4, bar 9"
std::string words_of(const std::vector<BarRange>& runs) {
  if (runs.empty()) return "no bars";
  std::vector<std::string> named;
  for (const BarRange& run : runs) {
    if (named.size() < kMostNamed) named.push_back(to_string(run));
  }
  return fmt::format("{}{}", fmt::join(named, ", "), runs.size() > kMostNamed ? " and more" : "");
}

/// "; there are bars 1 to 12", or what each of several passages has.
std::string bars_there_are(const Score& score) {
  if (score.passages.size() == 1) {
    const std::vector<BarRange> runs = runs_of_bars(score.passages.front());
    const bool one_bar = runs.size() == 1 && runs.front().first == runs.front().last;
    return (one_bar ? "; there is " : "; there are ") + words_of(runs);
  }
  std::string words;
  for (std::size_t p = 0; p < score.passages.size() && p < kMostNamed; ++p) {
    words += fmt::format("; passage {} has {}", p + 1, words_of(runs_of_bars(score.passages[p])));
  }
  const std::size_t named = std::min(score.passages.size(), kMostNamed);
  return named < score.passages.size()
             ? fmt::format("{}; {} more passages", words, score.passages.size() - named)
             : words;
}

}  // namespace

ScoreInput read_score(const std::string& path, const ChosenNotes& notes, Progress& progress) {
  std::optional<Source> source = read_input(path);
  return source ? read_score(std::move(*source), notes, progress)
                : failed(ExitStatus::input_failed);
}

ScoreInput read_score(Source source, const ChosenNotes& notes, Progress& progress) {
  ReadResult result = progress.during([&] { return read(source, {notes.hand, notes.part}); });
  say_text(render(text_read(result, source), result.diagnostics));
  if (!result.ok()) return failed(ExitStatus::input_failed);
  std::string name = source.name();
  std::optional<Score> score = chosen_part(std::move(result.score), name, notes);
  if (!score) return failed(ExitStatus::wrong_usage);
  if ((notes.bars || notes.hand) && !is_played(*score, notes.bars)) {
    say_nothing_is_played(name, *score, notes);
    return failed(ExitStatus::wrong_usage);
  }
  if (result.unpacked) source = std::move(*result.unpacked);
  ScoreInput input{ExitStatus::done, std::move(name), std::move(*score), std::move(source)};
  return notes.transposition || notes.all_keys ? transposed(std::move(input), notes)
                                               : std::move(input);
}

Transposed in_chosen_key(const Score& score, const ChosenNotes& notes) {
  return notes.all_keys ? in_all_keys(score) : transpose(score, *notes.transposition);
}

void say_nothing_is_played(const std::string& name, const Score& score, const ChosenNotes& notes) {
  if (score.passages.empty()) return say(name + ": " + std::string(kNoPassage));
  const std::string hand = notes.hand ? fmt::format(" by the {} hand", to_string(*notes.hand)) : "";
  const std::string bars = notes.bars ? " in " + to_string(*notes.bars) : "";
  say(fmt::format("{}: nothing is played{}{}{}", name, hand, bars,
                  notes.bars ? bars_there_are(score) : ""));
}

AnalysedScore analysed(std::string name, Score score, const AnalyseOptions& player,
                       const std::optional<BarRange>& bars) {
  AnalysedScore whole(std::move(name), std::move(score), player);
  return bars ? only_bars(std::move(whole), *bars) : std::move(whole);
}

}  // namespace fingerturn::cli
