#include "cli/commands.hpp"
#include "cli/commands/annotate.hpp"
#include "cli/options/fingers.hpp"
#include "cli/options/report.hpp"

#include <memory>

namespace fingerturn::cli {

Command add_finger(CLI::App& program) {
  CLI::App* line = program.add_subcommand(
      "finger", "Fill in missing fingers, the easiest way a model finds, and report on the whole");
  const auto options = std::make_shared<ReportOptions>();
  options->fingers.suggest = true;
  add_report(*line, *options);
  add_alternatives(*line, options->fingers.alternatives);
  line->footer(
      "Fingers that are given stay; what is filled in is marked with ?. It is a way\n"
      "to play, not the right one (docs/fingering.md).\n"
      "  echo 'C4 D E F G A B C' | fingerturn finger - --format passage");
  return {line, [options] { return annotate(*options); }};
}

}  // namespace fingerturn::cli
