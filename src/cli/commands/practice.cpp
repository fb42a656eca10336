#include "fingerturn/practice.hpp"

#include "cli/commands.hpp"
#include "cli/faults.hpp"
#include "cli/input.hpp"
#include "cli/messages.hpp"
#include "cli/options/files.hpp"
#include "cli/options/format.hpp"
#include "cli/options/look.hpp"
#include "cli/options/notes.hpp"
#include "cli/options/output.hpp"
#include "cli/options/player.hpp"
#include "cli/options/value.hpp"
#include "cli/output.hpp"
#include "cli/score_input.hpp"
#include "fingerturn/fingering.hpp"

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

struct PracticeFormat {
  std::string_view name;
  std::string_view purpose;  ///< what it is for, in the words of help
  std::string (*write)(const AnalysedScore& analysed, const PracticePlan& plan,
                       const TextStyle& style);
  bool is_alone = false;  ///< one document, which holds the plan of one input
};

using PlanWriter = std::string (*)(const AnalysedScore& analysed, const PracticePlan& plan);

template <PlanWriter write>
std::string without_style(const AnalysedScore& analysed, const PracticePlan& plan,
                          const TextStyle& /*style*/) {
  return write(analysed, plan);
}

constexpr std::array kPracticeFormats{
    PracticeFormat{"text", "to read", write_practice_text},
    PracticeFormat{"html", "to hand out", without_style<write_practice_html>, true},
    PracticeFormat{"markdown", "for study notes", without_style<write_practice_markdown>},
    PracticeFormat{"json", "for programs and the next plan", without_style<write_practice_json>,
                   true},
    PracticeFormat{"passage", "to play and to analyse", without_style<write_practice_passages>},
    PracticeFormat{"musicxml", "for a score of all that is to be played",
                   without_style<write_practice_musicxml>, true},
};

/// What the command line of `practice` asks for.
struct PracticeCommandOptions {
  std::vector<std::string> files;
  const PracticeFormat* format = nullptr;  ///< one of kPracticeFormats
  std::string output;                      ///< empty for standard output
  ChosenNotes notes;
  AnalyseOptions player;
  PracticeOptions plan;
  TextLook look;
  bool detail = false;
  std::string since;      ///< the file of an earlier plan; empty for none
  std::vector<int> done;  ///< numbers of its places
};

/// The earlier plan with what is marked as done on the command line; none, and a message, where it
/// cannot be read or has no such place.
std::optional<PracticeMemory> earlier_plan(const PracticeCommandOptions& options,
                                           ExitStatus& status) {
  const std::optional<Source> source = read_input(options.since);
  status = ExitStatus::input_failed;
  if (!source) return std::nullopt;
  PracticeMemoryResult result = read_practice(*source);
  if (!result.ok()) {
    say(fmt::format("{}:{}", source->name(), result.problem));
    return std::nullopt;
  }
  status = ExitStatus::wrong_usage;
  for (const int number : options.done) {
    const auto at = static_cast<std::size_t>(number - 1);
    if (at >= result.memory.places.size()) {
      say(fmt::format("--done: {} has {} places, and no place {}", source->name(),
                      result.memory.places.size(), number));
      return std::nullopt;
    }
    result.memory.places[at].done = true;
  }
  status = ExitStatus::done;
  return std::move(result.memory);
}

/// The plan of one input, whose missing fingers are filled in, in words.
std::string plan_of(const ScoreInput& input, const PracticeCommandOptions& options) {
  Score fingered =
      with_fingerings(input.score, {options.player.reach_semitones, 1}, options.notes.bars);
  const AnalysedScore shown =
      analysed(input.name, std::move(fingered), options.player, options.notes.bars);
  TextStyle style = text_style(options.look, options.output);
  style.detail = options.detail;
  return options.format->write(shown, plan_practice(shown, options.plan), style);
}

ExitStatus practise(const std::string& path, const PracticeCommandOptions& options, Output& output,
                    Progress& progress) {
  const ScoreInput input = read_score(path, options.notes, progress);
  if (input.status != ExitStatus::done) return input.status;
  const std::string text = progress.during([&] { return plan_of(input, options); });
  if (text.empty()) {
    say(input.name +
        ": there is nothing to write: no bar stands out by what it asks, or a score "
        "has no room for it");
    return ExitStatus::done;
  }
  if (output.size() > 0) output.write("\n");
  output.write(text);
  return ExitStatus::done;
}

ExitStatus practise_all(PracticeCommandOptions options) {
  if (!can_be_read(options.files)) return ExitStatus::wrong_usage;
  if (options.format->is_alone && options.files.size() > 1) {
    say(fmt::format("--format {} holds the plan of one file", options.format->name));
    return ExitStatus::wrong_usage;
  }
  std::vector<std::string> inputs = options.files;
  std::optional<PracticeMemory> memory;
  ExitStatus worst = ExitStatus::done;
  if (!options.since.empty()) {
    if (options.files.size() > 1) {
      say("--since is about the plan of one file");
      return ExitStatus::wrong_usage;
    }
    memory = earlier_plan(options, worst);
    if (!memory) return worst;
    options.plan.since = &*memory;
    inputs.push_back(options.since);
  }
  Output output(options.output);
  if (!output.open(InputFiles(inputs))) return ExitStatus::wrong_usage;
  Progress progress(leaves_room_for_progress(options.output));
  std::size_t number = 0;
  for (const std::string& path : options.files) {
    progress.turn_to(++number, options.files.size(), path);
    worst = std::max(
        worst, status_of_work(path, [&] { return practise(path, options, output, progress); }));
  }
  return output.size() > 0 && !output.finish() ? ExitStatus::wrong_usage : worst;
}

}  // namespace

Command add_practice(CLI::App& program) {
  CLI::App* line = program.add_subcommand(
      "practice", "Make a plan: what to practise first, how slowly, and when to go on");
  const auto options = std::make_shared<PracticeCommandOptions>();
  add_files(*line, options->files,
            "Files in the passage notation or in MusicXML; - is standard input");
  constexpr int kMostPlaces = 100;
  line->add_option("--top", options->plan.top, "So many places at most; 5 if not given")
      ->check(number_from(1, kMostPlaces))
      ->type_name("N");
  line->add_option("--minutes", options->plan.minutes, "Share so many minutes among the places")
      ->check(number_from(1, kMostPracticeMinutes))
      ->type_name("M");
  line->add_flag("--detail", options->detail, "Say what the sum that finds the places comes to");
  CLI::Option* since =
      line->add_option("--since", options->since,
                       "Go on from an earlier plan in JSON: what is new, what was done, and the "
                       "next tempo of each place")
          ->type_name("FILE");
  line->add_option("--done", options->done,
                   "Take these places of it as done, as in 1,3; else those that it marks")
      ->delimiter(',')
      ->check(number_from(1, kMostPlaces))
      ->type_name("N,...")
      ->needs(since);
  add_format(*line, std::span<const PracticeFormat>(kPracticeFormats), options->format);
  add_output(*line, options->output);
  add_chosen_notes(*line, options->notes);
  add_player(*line, options->player);
  add_text_look(*line, options->look);
  line->footer(
      "Missing fingers are filled in as by finger. The plan is one way to work and not\n"
      "the right one (docs/practice.md).\n"
      "  fingerturn practice etude.musicxml --minutes 30 --tempo 96");
  return {line, [options] { return practise_all(*options); }};
}

}  // namespace fingerturn::cli
