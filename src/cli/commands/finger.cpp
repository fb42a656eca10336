#include "cli/commands.hpp"
#include "cli/commands/annotate.hpp"
#include "cli/faults.hpp"
#include "cli/formats.hpp"
#include "cli/messages.hpp"
#include "cli/options/fingers.hpp"
#include "cli/options/notes.hpp"
#include "cli/options/report.hpp"
#include "cli/output.hpp"
#include "cli/report_input.hpp"
#include "fingerturn/fingers_back.hpp"
#include "fingerturn/read.hpp"
#include "fingerturn/why.hpp"
#include "text/wrap.hpp"

#include <algorithm>
#include <cstddef>
#include <memory>
#include <string>
#include <utility>
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
ExitStatus tell_why(const std::string& path, const ReportOptions& options, Output& output,
                    Progress& progress) {
  const BeatInBar& moment = *options.fingers.why;
  ScoreInput input = read_score(path, options.notes, progress);
  if (input.status != ExitStatus::done) return input.status;
  const std::vector<WhyFingers> all =
      progress.during([&] { return why_fingers(input.score, moment, fingering_options(options)); });
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
  Progress progress(leaves_room_for_progress(options.output));
  std::size_t number = 0;
  for (const std::string& path : options.files) {
    progress.turn_to(++number, options.files.size(), path);
    worst = std::max(
        worst, status_of_work(path, [&] { return tell_why(path, options, output, progress); }));
  }
  return output.size() > 0 && !output.finish() ? ExitStatus::wrong_usage : worst;
}

/// The score with the fingers of a passage, or what stands against it.
ExitStatus put_back(const ReportOptions& options) {
  const FingerOptions& fingers = options.fingers;
  if (options.files.size() > 1 || options.format->name != "musicxml") {
    say("--from makes one MusicXML score: name one, and --format musicxml");
    return ExitStatus::wrong_usage;
  }
  Output output(options.output);
  if (!output.open(InputFiles({options.files.front(), fingers.from}))) {
    return ExitStatus::wrong_usage;
  }
  ChosenNotes all = options.notes;
  all.bars.reset();
  Progress progress(leaves_room_for_progress(options.output));
  progress.turn_to(options.files.front());
  const ScoreInput score = read_score(options.files.front(), all, progress);
  if (score.status != ExitStatus::done) return score.status;
  ChosenNotes edited_notes;
  edited_notes.hand = options.notes.hand;
  ScoreInput edited = read_score(fingers.from, edited_notes, progress);
  if (edited.status != ExitStatus::done) return edited.status;
  if (form_of(*score.document) == SourceForm::notation) {
    say(score.name + ": --from puts fingers into a MusicXML score, and this is a passage");
    return ExitStatus::wrong_usage;
  }
  if (options.notes.bars) edited.score = only_bars(std::move(edited.score), *options.notes.bars);
  const FingersBack back = fingers_back(score.score, edited.score);
  if (!back.problem.empty()) {
    say(fmt::format("{}: not the notes of {}: {}; excerpt writes the notes of its bars",
                    edited.name, score.name, back.problem));
    return ExitStatus::input_failed;
  }
  for (const FingerChange& change : back.changed) say(render(change));
  if (!back.changed.empty() && !fingers.replace) {
    say(fmt::format("{} has other fingers on {} of the notes: --replace puts these in their place",
                    score.name, back.changed.size()));
    return ExitStatus::input_failed;
  }
  if (back.suggestions > 0) {
    say(fmt::format("{} suggested fingers (?) stay out", back.suggestions));
  }
  output.write(write_fingers(*score.document, score.score, back.score));
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
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
  add_from(*line, options->fingers);
  add_transposition(*line, options->notes);
  line->add_flag("--refinger", options->fingers.refinger,
                 "Suggest all fingers anew, whatever is given");
  line->footer(
      "Fingers that are given stay; what is filled in is marked with ?. It is a way\n"
      "to play, not the right one (docs/fingering.md).\n"
      "  echo 'C4 D E F G A B C' | fingerturn finger - --format passage\n"
      "  echo '1/8 C4 D E F G A B C' | fingerturn finger - --why 1:2.5");
  return {line, [options] {
            if (!options->fingers.from.empty()) return put_back(*options);
            return options->fingers.why ? why(*options) : annotate(*options);
          }};
}

}  // namespace fingerturn::cli
