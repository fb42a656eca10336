#include "cli/commands/compare.hpp"

#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "cli/score_input.hpp"
#include "fingerturn/fingerturn.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

/// The inputs, with missing fingers filled in where that is asked for.
std::optional<std::vector<AnalysedScore>> read_all(const AnnotateOptions& options,
                                                   ExitStatus& worst) {
  std::vector<AnalysedScore> all;
  for (const std::string& path : options.inputs) {
    ScoreInput input = read_score(path, options);
    worst = std::max(worst, input.status);
    if (input.status != ExitStatus::done) continue;
    all.push_back(with_difficulties(
        analysed_and_said(std::move(input.name), std::move(input.score), options)));
  }
  if (worst != ExitStatus::done) return std::nullopt;
  return all;
}

/// A score as the model fingers it, no finger being given.
AnalysedScore suggested(const Score& score, const AnnotateOptions& options) {
  return with_difficulties(analysed(
      "suggested, no finger given",
      with_suggestions(without_fingers(score), {options.analysis.reach_semitones, 1}), options));
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
  return std::any_of(comparisons.begin(), comparisons.end(),
                     [](const Comparison& comparison) { return !comparison.hands.empty(); });
}

std::string report_text(const std::vector<Comparison>& comparisons,
                        const AnnotateOptions& options) {
  if (options.format == Format::json) return write_comparison_json(comparisons);
  return write_comparison_text(comparisons, text_style(options));
}

}  // namespace

ExitStatus compare(const AnnotateOptions& options) {
  if (!can_read_inputs(options)) return ExitStatus::wrong_usage;
  Output output(options.output);
  if (!output.open(options.inputs)) return ExitStatus::wrong_usage;
  ExitStatus worst = ExitStatus::done;
  const std::optional<std::vector<AnalysedScore>> all = read_all(options, worst);
  if (!all) return worst;
  std::optional<AnalysedScore> suggestion;
  if (options.suggest) suggestion = suggested(all->front().written(), options);
  const PairedScores paired = compare_scores(*all, suggestion ? &*suggestion : nullptr);
  if (paired.problem) {
    say(problem_words(*all, *paired.problem));
    return ExitStatus::wrong_usage;
  }
  if (!any_played(paired.comparisons)) return ExitStatus::wrong_usage;  // that has been said
  output.write(report_text(paired.comparisons, options));
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
}

}  // namespace fingerturn::cli
