#include "cli/commands/try_fingers.hpp"

#include "cli/formats.hpp"
#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "cli/report_input.hpp"
#include "fingerturn/fingerturn.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

AnalysedScore analysed_as(std::string name, const Score& score, const ReportOptions& options) {
  return with_difficulties(
      cli::analysed(std::move(name), score, options.player, options.notes.bars));
}

std::string music_of(const ScoreInput& input, const Score& tried, const ReportOptions& options) {
  const bool is_typed = form_of(*input.document) == SourceForm::notation;
  if (options.format->name == "passage") {
    return write_passage(options.notes.bars ? only_bars(tried, *options.notes.bars) : tried);
  }
  return is_typed ? write_musicxml(AnalysedScore(input.name, tried), MusicXmlStyle{})
                  : write_fingers(*input.document, input.score, tried);
}

/// None where the format shows no comparison.
std::optional<std::string> report_of(std::string_view format, const PairedScores& paired,
                                     const TextStyle& style) {
  if (format == "text") return write_comparison_text(paired.comparisons, style);
  if (format == "html") return write_comparison_html(paired.comparisons);
  if (format == "markdown") return write_comparison_markdown(paired.comparisons);
  if (format == "json") return write_comparison_json(paired.comparisons);
  return std::nullopt;
}

std::optional<std::string> result_of(const ScoreInput& input, const Score& tried,
                                     const ReportOptions& options) {
  const std::string_view format = options.format->name;
  if (format == "passage" || format == "musicxml") return music_of(input, tried, options);
  const std::vector<AnalysedScore> both{analysed_as("as it is written", input.score, options),
                                        analysed_as("as it is tried", tried, options)};
  return report_of(format, compare_scores(both, nullptr), text_style(options.look, options.output));
}

}  // namespace

ExitStatus try_fingers(const ReportOptions& options) {
  if (options.files.size() > 1) {
    say("--set tries fingers in one file");
    return ExitStatus::wrong_usage;
  }
  Output output(options.output);
  if (!output.open(InputFiles(options.files))) return ExitStatus::wrong_usage;
  Progress progress(leaves_room_for_progress(options.output));
  progress.turn_to(options.files.front());
  const ScoreInput input = read_to_report(options.files.front(), options, progress);
  if (input.status != ExitStatus::done) return input.status;
  const FingersSet tried = set_fingers(input.score, options.fingers.settings);
  if (!tried.problem.empty()) {
    say(fmt::format("{}: {}", input.name, tried.problem));
    return ExitStatus::wrong_usage;
  }
  const std::optional<std::string> result =
      progress.during([&] { return result_of(input, tried.score, options); });
  if (!result) {
    say(
        fmt::format("--set is told as text, html, markdown or json, or written as passage or "
                    "musicxml, not as {}",
                    options.format->name));
    return ExitStatus::wrong_usage;
  }
  output.write(*result);
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
}

}  // namespace fingerturn::cli
