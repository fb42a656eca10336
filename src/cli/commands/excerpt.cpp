#include "cli/commands/excerpt.hpp"

#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "cli/score_input.hpp"
#include "fingerturn/excerpt.hpp"

namespace fingerturn::cli {

ExitStatus excerpt(const AnnotateOptions& options) {
  Output output(options.output);
  if (!output.open(options.inputs)) return ExitStatus::wrong_usage;
  const ScoreInput input = read_score(options.inputs.front(), options);
  if (input.status != ExitStatus::done) return input.status;
  const Excerpt part = fingerturn::excerpt(input.score, *options.bars);
  if (part.passages.empty()) {
    say_nothing_is_played(input.name, input.score, options);
    return ExitStatus::wrong_usage;
  }
  output.write(write_excerpt(input.score, part));
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
}

}  // namespace fingerturn::cli
