#include "cli/commands.hpp"
#include "cli/commands/annotate.hpp"
#include "cli/faults.hpp"
#include "cli/formats.hpp"
#include "cli/messages.hpp"
#include "cli/options/fingers.hpp"
#include "cli/options/report.hpp"
#include "cli/output.hpp"
#include "cli/report_input.hpp"
#include "fingerturn/why.hpp"
#include "text/wrap.hpp"

#include <algorithm>
#include <memory>
#include <string>
#include <vector>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

std::string why_text(const std::vector<WhyFingers>& all, const TextStyle& style) {
  std::string text;
  for (const WhyFingers& why : all) text += write_why_text(why, style.columns) + '\n';
  text += write_why_legend(all, style.columns);
  return text + '\n' + wrapped("", caution(), style.columns);
}

/// What decided at a moment of one input.
ExitStatus tell_why(const std::string& path, const ReportOptions& options, Output& output) {
  const BeatInBar& moment = *options.fingers.why;
  ScoreInput input = read_score(path, options.notes);
  if (input.status != ExitStatus::done) return input.status;
  const std::vector<WhyFingers> all = why_fingers(input.score, moment, fingering_options(options));
  if (all.empty()) {
    say(
        fmt::format("{}: nothing is struck in bar {} on beat {}; beats are known where there are a "
                    "meter and note values",
                    input.name, moment.bar, moment.beat));
    return ExitStatus::wrong_usage;
  }
  output.write(options.format->name == "json"
                   ? write_why_json(input.name, all)
                   : why_text(all, text_style(options.look, options.output)));
  return ExitStatus::done;
}

ExitStatus why(const ReportOptions& options) {
  if (options.format->name != "text" && options.format->name != "json") {
    say(fmt::format("--why is told as text or json, not as {}", options.format->name));
    return ExitStatus::wrong_usage;
  }
  Output output(options.output);
  if (!output.open(InputFiles(options.files))) return ExitStatus::wrong_usage;
  ExitStatus worst = ExitStatus::done;
  for (const std::string& path : options.files) {
    worst = std::max(worst, status_of_work(path, [&] { return tell_why(path, options, output); }));
  }
  return output.size() > 0 && !output.finish() ? ExitStatus::wrong_usage : worst;
}

}  // namespace

Command add_finger(CLI::App& program) {
  CLI::App* line = program.add_subcommand(
      "finger", "Fill in missing fingers, the easiest way a model finds, and report on the whole");
  const auto options = std::make_shared<ReportOptions>();
  options->fingers.suggest = true;
  add_report(*line, *options);
  add_alternatives(*line, options->fingers.alternatives);
  add_wishes(*line, options->fingers);
  add_why(*line, options->fingers.why);
  line->footer(
      "Fingers that are given stay; what is filled in is marked with ?. It is a way\n"
      "to play, not the right one (docs/fingering.md).\n"
      "  echo 'C4 D E F G A B C' | fingerturn finger - --format passage\n"
      "  echo '1/8 C4 D E F G A B C' | fingerturn finger - --why 1:2.5");
  return {line, [options] { return options->fingers.why ? why(*options) : annotate(*options); }};
}

}  // namespace fingerturn::cli
