#include "fingerturn/scale.hpp"

#include "cli/commands.hpp"
#include "cli/messages.hpp"
#include "cli/options/music_format.hpp"
#include "cli/options/notes.hpp"
#include "cli/options/output.hpp"
#include "cli/options/value.hpp"
#include "cli/output.hpp"
#include "cli/score_input.hpp"
#include "fingerturn/transpose.hpp"
#include "write/passage/passage.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace fingerturn::cli {
namespace {

/// What the command line of `scale` asks for.
struct ScaleCommandOptions {
  std::vector<std::string> name_words;  ///< the name, in one word or several
  bool list = false;                    ///< all names instead
  ScaleOptions scale;
  const MusicFormat* format = nullptr;
  std::string output;  ///< empty for standard output
  ChosenNotes notes;   ///< only in which key
};

constexpr const char* kWhereAllAre = "; fingerturn scale --list lists them";

/// Throws where a text names no pitch.
Pitch pitch_in(const std::string& text) {
  if (const std::optional<Pitch> pitch = parse_pitch(text)) return *pitch;
  throw CLI::ValidationError("--from",
                             fmt::format("expected a pitch as in Bb2, found \"{}\"", text));
}

ExitStatus refuse(std::string_view problem) {
  say(problem);
  return ExitStatus::wrong_usage;
}

ExitStatus list(const ScaleCommandOptions& options) {
  if (!options.name_words.empty()) {
    return refuse("--list lists all scales; leave the name or --list away");
  }
  std::string text;
  for (const std::string& name : handbook_scale_names()) text += name + '\n';
  return write_whole(options.output, text);
}

/// A handbook scale, in the passage notation with comments on its fingers.
ExitStatus scale(const ScaleCommandOptions& options) {
  if (options.list) return list(options);
  if (options.name_words.empty()) {
    return refuse(std::string("name a scale, as in \"B-flat major\"") + kWhereAllAre);
  }
  ScaleResult result =
      handbook_scale(fmt::format("{}", fmt::join(options.name_words, " ")), options.scale);
  if (!result.ok()) return refuse(result.problem + (result.is_unknown ? kWhereAllAre : ""));
  if (const ChosenNotes& notes = options.notes; notes.transposition || notes.all_keys) {
    Transposed moved = in_chosen_key(result.score, notes);
    if (!moved.problem.empty()) return refuse(moved.problem);
    result.score = std::move(moved.score);
  }
  const auto as_passage = [&] {
    std::vector<std::string> comments;
    for (const Passage& passage : result.score.passages) {
      comments.emplace_back();
      for (const std::string& remark : passage.remarks) comments.back() += comment_lines(remark);
    }
    return write_passage(result.score, comments);
  };
  const std::optional<std::string> text =
      written_in(*options.format, result.score, "scale", as_passage);
  return text ? write_whole(options.output, *text) : ExitStatus::wrong_usage;
}

/// What else than a scale in parallel octaves is written.
void add_forms(CLI::App& command, ScaleOptions& wanted) {
  constexpr int kMostInversions = 3;
  command
      .add_option("--inversion", wanted.inversion,
                  "Begin an arpeggio on its second note (1), third (2) or fourth (3)")
      ->check(number_from(1, kMostInversions))
      ->type_name("N");
  command.add_flag("--contrary", wanted.contrary,
                   "Begin with both hands on one key and move apart; with --both return, with "
                   "--down come together");
  add_choice(
      command, "--apart",
      {{"third", HandsApart::third}, {"sixth", HandsApart::sixth}, {"tenth", HandsApart::tenth}},
      wanted.apart, "Keep the hands so far apart");
  add_choice(command, "--double",
             {{"octaves", ScaleNotes::octaves},
              {"thirds", ScaleNotes::thirds},
              {"sixths", ScaleNotes::sixths}},
             wanted.notes, "Play double notes in each hand");
}

}  // namespace

Command add_scale(CLI::App& program) {
  CLI::App* line = program.add_subcommand(
      "scale", "Write a scale or arpeggio with the fingers of the handbooks, as a passage");
  const auto options = std::make_shared<ScaleCommandOptions>();
  ScaleOptions& wanted = options->scale;
  line->add_option("NAME", options->name_words,
                   "The scale, as in \"B-flat major\", \"F# harmonic minor\", \"C chromatic\", "
                   "\"Eb major arpeggio\", \"G dominant seventh\"; plain minor is natural minor")
      ->type_name("SCALE");
  line->add_flag("--list", options->list, "List all names instead");
  add_hand(*line, wanted.hand,
           "Write this hand only; else both, the left an octave below the right");
  line->add_option("--octaves", wanted.octaves, "How many octaves, 1 if not given")
      ->check(number_from(1, kMostScaleOctaves))
      ->type_name("N");
  line->add_option_function<std::string>(
          "--from", [&wanted](const std::string& text) { wanted.from = pitch_in(text); },
          "Begin with this pitch, as in Bb2; where both hands play, the right hand's first, a "
          "third "
          "or tenth apart the left hand's. A middle one if not given")
      ->type_name("PITCH");
  const auto turn = [&wanted](ScaleDirection direction) {
    return [&wanted, direction] { wanted.direction = direction; };
  };
  CLI::Option* down = line->add_flag_callback("--down", turn(ScaleDirection::down),
                                              "Write it falling instead of rising");
  line->add_flag_callback("--both", turn(ScaleDirection::up_and_down), "Write it up and down")
      ->excludes(down);
  add_forms(*line, wanted);
  add_transposition(*line, options->notes);
  add_music_format(*line, options->format);
  add_output(*line, options->output);
  line->footer(
      "What it writes is a passage that the other commands read (docs/notation.md):\n"
      "  fingerturn scale \"B-flat major\" --hand left | fingerturn annotate -");
  return {line, [options] { return scale(*options); }};
}

}  // namespace fingerturn::cli
