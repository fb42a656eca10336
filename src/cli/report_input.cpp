#include "cli/report_input.hpp"

#include "cli/formats.hpp"
#include "cli/input.hpp"
#include "cli/messages.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/read.hpp"
#include "fingerturn/report.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <utility>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

/// False, and a message, where a passage cannot be written as a MusicXML score.
bool can_be_a_score(const ScoreInput& input) {
  const std::string problem = musicxml_problem(input.score);
  if (!problem.empty()) say(fmt::format("{}: {}", input.name, problem));
  return problem.empty();
}

}  // namespace

FingeringOptions fingering_options(const ReportOptions& options) {
  return {options.player.reach_semitones, static_cast<std::size_t>(options.fingers.alternatives),
          options.fingers.wishes};
}

ScoreInput read_to_report(const std::string& path, const ReportOptions& options,
                          Progress& progress) {
  std::optional<Source> source = read_input(path);
  if (!source) return failed(ExitStatus::input_failed);
  const bool is_typed = form_of(*source) == SourceForm::notation;
  ScoreInput input = read_score(std::move(*source), options.notes, progress);
  if (input.status != ExitStatus::done) return input;
  if (options.format->is_score && is_typed && !can_be_a_score(input)) {
    return failed(ExitStatus::wrong_usage);
  }
  if (options.fingers.refinger) input.score = without_fingers(std::move(input.score));
  if (!options.fingers.suggest && !options.fingers.refinger) return input;
  if (options.fingers.kept) {
    input.score = without_suggestions_outside(std::move(input.score), *options.fingers.kept);
  }
  input.score = progress.during(
      [&] { return with_fingerings(input.score, fingering_options(options), options.notes.bars); });
  return input;
}

}  // namespace fingerturn::cli
