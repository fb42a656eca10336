#include "cli/commands.hpp"
#include "cli/messages.hpp"
#include "cli/options/files.hpp"
#include "cli/options/format.hpp"
#include "cli/options/look.hpp"
#include "cli/options/notes.hpp"
#include "cli/options/output.hpp"
#include "cli/options/player.hpp"
#include "cli/output.hpp"
#include "cli/score_input.hpp"
#include "fingerturn/fingerturn.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

struct CompareFormat {
  std::string_view name;
  std::string_view purpose;  ///< what it is for, in the words of help
  std::string (*write)(std::span<const Comparison> comparisons, const TextStyle& style);
};

constexpr std::array kCompareFormats{
    CompareFormat{"text", "to read", write_comparison_text},
    CompareFormat{"markdown", "for study notes",
                  [](std::span<const Comparison> comparisons, const TextStyle& /*style*/) {
                    return write_comparison_markdown(comparisons);
                  }},
    CompareFormat{"html", "to hand out",
                  [](std::span<const Comparison> comparisons, const TextStyle& /*style*/) {
                    return write_comparison_html(comparisons);
                  }},
    CompareFormat{"json", "for programs",
                  [](std::span<const Comparison> comparisons, const TextStyle& /*style*/) {
                    return write_comparison_json(comparisons);
                  }},
};

/// What the command line of `compare` asks for.
struct CompareOptions {
  std::vector<std::string> files;
  bool only_both = false;   ///< only events that have all their fingers in all
  bool alternates = false;  ///< the fingers that are offered beside others are fingerings too
  bool suggest = false;     ///< fill in missing fingers first, and add what a model suggests
  const CompareFormat* format = nullptr;  ///< one of kCompareFormats
  std::string output;                     ///< empty for standard output
  ChosenNotes notes;
  AnalyseOptions player;
  TextLook look;
};

/// The bars that all have, of passages of which one has bars that another has not, such as a score
/// and an excerpt of it; none where no bars need to be left out, or none is in all.
std::optional<BarRange> shared_bars(const std::vector<ScoreInput>& inputs) {
  BarRange shared{0, kHighestBar};
  BarRange all{kHighestBar, 0};
  for (const ScoreInput& input : inputs) {
    if (input.score.passages.size() != 1) return std::nullopt;
    const std::vector<std::int32_t> bars = bars_of(input.score.passages.front());
    if (bars.empty()) return std::nullopt;
    shared = {std::max(shared.first, bars.front()), std::min(shared.last, bars.back())};
    all = {std::min(all.first, bars.front()), std::max(all.last, bars.back())};
  }
  const bool is_part = shared != all && shared.first <= shared.last;
  return is_part ? std::optional(shared) : std::nullopt;
}

/// Behind each input the fingerings that it offers beside its own; false, and a message, where none
/// offers any.
bool add_alternates(std::vector<ScoreInput>& inputs) {
  std::vector<ScoreInput> all;
  for (ScoreInput& input : inputs) {
    const std::vector<Score> alternates = alternate_fingerings(input.score);
    const std::string name = input.name + ", alternate fingers";
    all.push_back(std::move(input));
    for (std::size_t i = 0; i < alternates.size(); ++i) {
      const std::string number = i == 0 ? "" : fmt::format(" {}", i + 1);
      all.push_back({ExitStatus::done, name + number, alternates[i], std::nullopt});
    }
  }
  const bool any = all.size() > inputs.size();
  if (!any) say(all.front().name + ": no finger is offered beside another in it");
  inputs = std::move(all);
  return any;
}

AnalysedScore analysed_to_compare(ScoreInput input, const CompareOptions& options) {
  if (options.suggest) {
    input.score =
        with_fingerings(input.score, {options.player.reach_semitones, 1}, options.notes.bars);
  }
  return with_difficulties(
      analysed(std::move(input.name), std::move(input.score), options.player, options.notes.bars));
}

/// The inputs, with missing fingers filled in where that is asked for.
std::optional<std::vector<AnalysedScore>> read_all(CompareOptions& options, ExitStatus& worst,
                                                   Progress& progress) {
  std::vector<ScoreInput> inputs;
  for (const std::string& path : options.files) {
    progress.turn_to(inputs.size() + 1, options.files.size(), path);
    inputs.push_back(read_score(path, options.notes, progress));
    worst = std::max(worst, inputs.back().status);
  }
  if (worst != ExitStatus::done) return std::nullopt;
  if (options.alternates && !add_alternates(inputs)) {
    worst = ExitStatus::wrong_usage;
    return std::nullopt;
  }
  if (!options.notes.bars && inputs.size() > 1) options.notes.bars = shared_bars(inputs);
  std::vector<AnalysedScore> all;
  for (ScoreInput& input : inputs) {
    progress.turn_to(all.size() + 1, inputs.size(), input.name);
    all.push_back(progress.during([&] { return analysed_to_compare(std::move(input), options); }));
  }
  return all;
}

/// A score as the model fingers it, no finger being given.
AnalysedScore suggested(const Score& score, const CompareOptions& options) {
  Score fingered = with_suggestions(without_fingers(score), {options.player.reach_semitones, 1});
  return with_difficulties(analysed("suggested, no finger given", std::move(fingered),
                                    options.player, options.notes.bars));
}

std::string count_words(std::size_t passages) {
  return passages == 1 ? "1 passage" : fmt::format("{} passages", passages);
}

std::string problem_words(const std::vector<AnalysedScore>& all, const PairingProblem& problem) {
  const std::string& name = all[problem.score].name();
  switch (problem.kind) {
    case PairingProblem::Kind::no_passage:
      return name + ": there is no passage in it to compare";
    case PairingProblem::Kind::one_passage:
      return name +
             ": there is one passage in it; name another file to compare it with, or compare it "
             "with a suggestion by --suggest";
    case PairingProblem::Kind::counts_differ:
      return fmt::format("{} has {} and {} has {}; choose one with --passage", all.front().name(),
                         count_words(all.front().size()), name,
                         count_words(all[problem.score].size()));
    case PairingProblem::Kind::notes_differ:
      break;
  }
  return "not the same notes: " + problem.words;
}

bool any_played(const std::vector<Comparison>& comparisons) {
  return std::ranges::any_of(
      comparisons, [](const Comparison& comparison) { return !comparison.hands.empty(); });
}

bool any_compared(const std::vector<Comparison>& comparisons) {
  return std::ranges::any_of(comparisons, [](const Comparison& comparison) {
    return std::ranges::any_of(comparison.hands,
                               [](const HandComparison& hand) { return !hand.compared.empty(); });
  });
}

/// Fingerings of the same notes side by side: the passages of one input, or those of several inputs
/// passage by passage; with `suggest` beside what a model suggests.
ExitStatus compare(CompareOptions options) {
  if (!can_be_read(options.files)) return ExitStatus::wrong_usage;
  Output output(options.output);
  if (!output.open(InputFiles(options.files))) return ExitStatus::wrong_usage;
  ExitStatus worst = ExitStatus::done;
  Progress progress(leaves_room_for_progress(options.output));
  const std::optional<std::vector<AnalysedScore>> all = read_all(options, worst, progress);
  if (!all) return worst;
  std::optional<AnalysedScore> suggestion;
  const ComparedEvents events =
      options.only_both ? ComparedEvents::fingered_in_all : ComparedEvents::all;
  const PairedScores paired = progress.during([&] {
    if (options.suggest) suggestion = suggested(all->front().written(), options);
    return compare_scores(*all, suggestion ? &*suggestion : nullptr, events);
  });
  if (paired.problem) {
    say(problem_words(*all, *paired.problem));
    return ExitStatus::wrong_usage;
  }
  if (!any_played(paired.comparisons)) {
    say_nothing_is_played(all->front().name(), all->front().written(), options.notes);
    return ExitStatus::wrong_usage;
  }
  if (!any_compared(paired.comparisons)) {
    say("no note has a finger in all that is compared; --only-both leaves out all others");
    return ExitStatus::wrong_usage;
  }
  const TextStyle style = text_style(options.look, options.output);
  output.write(progress.during([&] { return options.format->write(paired.comparisons, style); }));
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
}

}  // namespace

Command add_compare(CLI::App& program) {
  CLI::App* line = program.add_subcommand(
      "compare", "Put fingerings of the same notes side by side: where they differ, and in what");
  const auto options = std::make_shared<CompareOptions>();
  add_files(*line, options->files,
            "One file, whose passages are compared with each other, or several, passage by "
            "passage; - is standard input");
  line->add_flag("--suggest", options->suggest,
                 "Fill in missing fingers first, and compare with what a model suggests when no "
                 "finger is given");
  line->add_flag("--only-both", options->only_both,
                 "In the agreement and below, compare only notes that have a finger in all; "
                 "suggested ones are "
                 "none");
  line->add_flag("--alternate", options->alternates,
                 "Compare with the fingers that a MusicXML score offers beside its own");
  add_format(*line, kCompareFormats, options->format);
  add_output(*line, options->output);
  add_chosen_notes(*line, options->notes);
  add_player(*line, options->player);
  add_text_look(*line, options->look);
  line->footer(
      "The notes must be the same, and in the same order in each hand.\n"
      "  fingerturn compare printed.passage mine.passage\n"
      "  fingerturn compare etude.musicxml --suggest --bars 5-8");
  return {line, [options] { return compare(*options); }};
}

}  // namespace fingerturn::cli
