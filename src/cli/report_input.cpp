#include "cli/report_input.hpp"

#include "cli/formats.hpp"
#include "cli/input.hpp"
#include "cli/messages.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/read.hpp"

#include <cstddef>
#include <optional>
#include <utility>

#include <fmt/core.h>

namespace fingerturn::cli {

ScoreInput read_to_report(const std::string& path, const ReportOptions& options) {
  std::optional<Source> source = read_input(path);
  ScoreInput input;
  if (!source) {
    input.status = ExitStatus::input_failed;
  } else if (options.format->gives_score_back && form_of(*source) == SourceForm::notation) {
    say(fmt::format("{}: --format {} writes into a MusicXML score, and this is none",
                    source->name(), options.format->name));
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

}  // namespace fingerturn::cli
