#include "fingerturn/excerpt.hpp"

#include "cli/commands.hpp"
#include "cli/options/music_format.hpp"
#include "cli/options/notes.hpp"
#include "cli/options/output.hpp"
#include "cli/output.hpp"
#include "cli/score_input.hpp"

#include <memory>
#include <optional>
#include <string>

namespace fingerturn::cli {
namespace {

/// What the command line of `excerpt` asks for.
struct ExcerptOptions {
  std::string file;
  ChosenNotes notes;  ///< with bars
  const MusicFormat* format = nullptr;
  std::string output;  ///< empty for standard output
};

/// Some bars of a score, in the passage notation ready to be edited.
ExitStatus excerpt(const ExcerptOptions& options) {
  Output output(options.output);
  if (!output.open(InputFiles({options.file}))) return ExitStatus::wrong_usage;
  Progress progress(leaves_room_for_progress(options.output));
  progress.turn_to(options.file);
  const ScoreInput input = read_score(options.file, options.notes, progress);
  if (input.status != ExitStatus::done) return input.status;
  const Excerpt cut = fingerturn::excerpt(input.score, *options.notes.bars);
  const std::optional<std::string> text = written_in(
      *options.format, cut.score, input.name, [&] { return write_excerpt(input.score, cut); });
  if (!text) return ExitStatus::wrong_usage;
  output.write(*text);
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
}

}  // namespace

Command add_excerpt(CLI::App& program) {
  CLI::App* line = program.add_subcommand(
      "excerpt", "Take some bars out of a score or passage, as a passage to work on");
  const auto options = std::make_shared<ExcerptOptions>();
  line->add_option("FILE", options->file,
                   "A file in the passage notation or in MusicXML; - is standard input")
      ->required()
      ->type_name("");
  add_bars(*line, "--bars", options->notes.bars, "Take these bars, as in 5-8")->required();
  add_hand(*line, options->notes.hand,
           "Take this hand only; a MusicXML part of one staff is taken as this hand's");
  add_passage_and_part(*line, options->notes);
  add_transposition(*line, options->notes);
  add_music_format(*line, options->format);
  add_output(*line, options->output);
  line->footer(
      "Bars keep their numbers. Notes that turn otherwise than in the score, without\n"
      "what stands before or after, are named in comments.\n"
      "  fingerturn excerpt etude.musicxml --bars 5-8 --output etude-5-8.passage");
  return {line, [options] { return excerpt(*options); }};
}

}  // namespace fingerturn::cli
