#include "cli/options.hpp"

#include "fingerturn/fingering.hpp"
#include "fingerturn/report.hpp"

#include <charconv>
#include <map>
#include <string>
#include <string_view>
#include <system_error>

namespace fingerturn::cli {
namespace {

constexpr int kMostPassages = 1000000;
constexpr int kMostColumns = 1000;
constexpr int kMostJobs = 1000;

std::optional<std::int32_t> bar_number(std::string_view text) {
  std::int32_t number = 0;
  const char* const end = text.data() + text.size();
  const auto [stop, problem] = std::from_chars(text.data(), end, number);
  if (problem != std::errc{} || stop != end || number < 0) return std::nullopt;
  return number;
}

/// "5-8", or "5" for one bar; the last may come before the first.
std::optional<BarRange> bar_range(std::string_view text) {
  const std::size_t dash = text.find('-');
  const std::optional<std::int32_t> first = bar_number(text.substr(0, dash));
  if (dash == std::string_view::npos) {
    return first ? std::optional(BarRange{*first, *first}) : std::nullopt;
  }
  const std::optional<std::int32_t> last = bar_number(text.substr(dash + 1));
  if (!first || !last) return std::nullopt;
  return BarRange{*first, *last};
}

/// Lets whole numbers pass that lie between two others.
CLI::Validator number_from(int least, int most) {
  const auto check = [least, most](std::string& text) {
    int number = 0;
    const char* const end = text.data() + text.size();
    const auto [stop, problem] = std::from_chars(text.data(), end, number);
    const bool passes = problem == std::errc{} && stop == end && number >= least && number <= most;
    return passes ? std::string()
                  : "expected a number from " + std::to_string(least) + " to " +
                        std::to_string(most) + ", found \"" + text + "\"";
  };
  return {check, ""};
}

/// Lets the tempos pass that the notation takes.
CLI::Validator plausible_tempo() {
  const auto check = [](std::string& text) {
    double number = 0;
    const char* const end = text.data() + text.size();
    const auto [stop, problem] = std::from_chars(text.data(), end, number);
    const bool passes = problem == std::errc{} && stop == end && is_plausible_tempo(number);
    return passes ? std::string()
                  : "expected quarter notes a minute, from 1 to 2000, found \"" + text + "\"";
  };
  return {check, ""};
}

/// An option whose words stand for values.
template <typename Value>
CLI::Option* add_choice(CLI::App& command, const std::string& name,
                        const std::map<std::string, Value>& choices, Value& value,
                        const std::string& description) {
  const auto choose = [&choices, &value](const std::string& word) { value = choices.at(word); };
  std::string words;
  for (const auto& [word, meaning] : choices) words += (words.empty() ? "" : "|") + word;
  const auto check = [&choices, words](const std::string& word) {
    return choices.contains(word) ? std::string()
                                  : "expected " + words + ", found \"" + word + "\"";
  };
  return command.add_option_function<std::string>(name, choose, description)
      ->check(check, "")
      ->type_name(words);
}

void add_hand(CLI::App& command, std::optional<Hand>& hand, const std::string& description) {
  static const std::map<std::string, std::optional<Hand>> kHands{
      {"both", std::nullopt}, {"left", Hand::left}, {"right", Hand::right}};
  add_choice(command, "--hand", kHands, hand, description);
}

CLI::Option* add_bars(CLI::App& command, AnnotateOptions& options, const std::string& description) {
  return command
      .add_option_function<std::string>(
          "--bars",
          [&options](const std::string& text) {
            options.bars = bar_range(text);
            if (!options.bars) {
              throw CLI::ValidationError("--bars",
                                         "expected bars as in 5-8 or 5, found \"" + text + "\"");
            }
            const auto [first, last] = *options.bars;
            if (first <= last) return;
            throw CLI::ValidationError(
                "--bars", "expected the first bar before the last, as in " + std::to_string(last) +
                              '-' + std::to_string(first) + ", found \"" + text + '"');
          },
          description)
      ->type_name("FIRST-LAST");
}

void add_passage_and_part(CLI::App& command, AnnotateOptions& options) {
  command.add_option("--passage", options.passage, "Take the passage of this number only, from 1")
      ->check(number_from(1, kMostPassages))
      ->type_name("N");
  command
      .add_option("--part", options.part,
                  "Of a MusicXML score take the part of this number only, from 1; else those for "
                  "keyboard")
      ->check(number_from(1, kMostPassages))
      ->type_name("N");
}

void add_choice_of_notes(CLI::App& command, AnnotateOptions& options) {
  add_hand(command, options.hand,
           "Show this hand only; a MusicXML part of one staff is taken as this hand's");
  add_bars(command, options,
           "Show these bars only, as in 5-8; what the bars before prepare still counts");
  add_passage_and_part(command, options);
}

/// What is taken instead of what the music says.
void add_player(CLI::App& command, AnalyseOptions& options) {
  command
      .add_option("--tempo", options.quarters_per_minute,
                  "Take this tempo, in quarter notes a minute, instead of the written ones")
      ->check(plausible_tempo())
      ->type_name("N");
  command
      .add_option("--reach", options.reach_semitones,
                  "Fit the watch list to a hand that takes this interval with 1-5 in comfort, in "
                  "semitones")
      ->check(number_from(kSmallestReach, kWidestReach))
      ->type_name("N");
}

void add_columns(CLI::App& command, std::optional<int>& columns, const std::string& description) {
  command.add_option("--columns", columns, description)
      ->check(number_from(kFewestColumns, kMostColumns))
      ->type_name("N");
}

/// How a text looks, whatever it says.
void add_text_looks(CLI::App& command, AnnotateOptions& options) {
  static const std::map<std::string, Colour> kColours{
      {"always", Colour::always}, {"auto", Colour::automatic}, {"never", Colour::never}};
  command.add_flag("--ascii", options.ascii, "Use < and > instead of arrows, and no other signs");
  add_columns(command, options.columns,
              "Make the text this wide; else as wide as the terminal, or 80");
  add_choice(command, "--color", kColours, options.colour,
             "Colour on a terminal (auto), always or never");
}

void add_looks(CLI::App& command, AnnotateOptions& options) {
  command.add_flag("--detail", options.detail, "Give the reason for every note, in a sentence");
  command.add_flag("--cues", options.cues, "Give every note a short line for practising");
  command.add_flag("--trace", options.trace, "Draw the swing of the forearm in text");
  command.add_flag("--words", options.words,
                   "Under the notes of a score, write words instead of arrows");
  add_text_looks(command, options);
}

/// What the commands share that report on a passage.
void add_report(CLI::App& command, AnnotateOptions& options) {
  static const std::map<std::string, Format> kFormats{
      {"html", Format::html},         {"json", Format::json},         {"jsonl", Format::jsonl},
      {"markdown", Format::markdown}, {"musicxml", Format::musicxml}, {"passage", Format::passage},
      {"svg", Format::svg},           {"text", Format::text}};
  command.group("Commands");
  command
      .add_option(
          "FILE", options.inputs,
          "Files in the passage notation (docs/notation.md) or in MusicXML (.musicxml, .xml, "
          ".mxl); - is standard input")
      ->required()
      ->type_name("");
  add_choice(command, "--format", kFormats, options.format,
             "text to read, html to hand out, svg for the picture alone, markdown for study notes, "
             "json or jsonl for programs, passage to write the notation anew, musicxml to get a "
             "MusicXML score back with the analysis under its notes");
  command
      .add_option("-o,--output", options.output,
                  "Write to this file instead of the screen; html, svg and markdown also into a "
                  "folder, a page for each passage and an index")
      ->type_name("FILE|DIR/");
  add_choice_of_notes(command, options);
  add_player(command, options.analysis);
  add_looks(command, options);
}

void add_output(CLI::App& command, std::string& output) {
  command.add_option("-o,--output", output, "Write to this file instead of the screen")
      ->type_name("FILE");
}

void add_suggest(CLI::App& command, bool& suggest) {
  command.add_flag("--suggest", suggest,
                   "Fill in missing fingers first; what is filled in is marked with ?");
}

}  // namespace

CLI::App* add_annotate(CLI::App& program, AnnotateOptions& options) {
  CLI::App* command =
      program.add_subcommand("annotate", "Say for every note of a passage how the forearm turns");
  add_report(*command, options);
  add_suggest(*command, options.suggest);
  command->footer(
      "A passage is typed as it is played, each note with its finger:\n"
      "  echo 'C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C:5' | fingerturn annotate -");
  return command;
}

CLI::App* add_finger(CLI::App& program, AnnotateOptions& options) {
  CLI::App* command = program.add_subcommand(
      "finger", "Fill in missing fingers, the easiest way a model finds, and report on the whole");
  options.suggest = true;
  add_report(*command, options);
  command
      ->add_option("--alternatives", options.fingerings,
                   "Give this many fingerings of each passage, the easiest first")
      ->check(number_from(1, static_cast<int>(kMostFingerings)))
      ->type_name("N");
  command->footer(
      "Fingers that are given stay; what is filled in is marked with ?. It is a way\n"
      "to play, not the right one (docs/fingering.md).\n"
      "  echo 'C4 D E F G A B C' | fingerturn finger - --format passage");
  return command;
}

CLI::App* add_scale(CLI::App& program, ScaleCommandOptions& options) {
  CLI::App* command = program.add_subcommand(
      "scale", "Write a scale or arpeggio with the fingers of the handbooks, as a passage");
  command->group("Commands");
  command
      ->add_option("NAME", options.name_words,
                   "The scale, as in \"B-flat major\", \"F# harmonic minor\", \"C chromatic\", "
                   "\"Eb major arpeggio\", \"G dominant seventh\"; plain minor is natural minor")
      ->type_name("");
  command->add_flag("--list", options.list, "List all names instead");
  add_hand(*command, options.scale.hand,
           "Write this hand only; else both, the left an octave below the right");
  command->add_option("--octaves", options.scale.octaves, "How many octaves, 1 if not given")
      ->check(number_from(1, kMostScaleOctaves))
      ->type_name("N");
  command
      ->add_option_function<std::string>(
          "--from",
          [&options](const std::string& text) {
            options.scale.from = parse_pitch(text);
            if (options.scale.from) return;
            throw CLI::ValidationError("--from",
                                       "expected a pitch as in Bb2, found \"" + text + "\"");
          },
          "Begin with this pitch, as in Bb2; where both hands play, the right hand's first. A "
          "middle one if not given")
      ->type_name("PITCH");
  const auto turn = [&options](ScaleDirection direction) {
    return [&options, direction] { options.scale.direction = direction; };
  };
  CLI::Option* down = command->add_flag_callback("--down", turn(ScaleDirection::down),
                                                 "Write it falling instead of rising");
  command->add_flag_callback("--both", turn(ScaleDirection::up_and_down), "Write it up and down")
      ->excludes(down);
  add_output(*command, options.output);
  command->footer(
      "What it writes is a passage that the other commands read (docs/notation.md):\n"
      "  fingerturn scale \"B-flat major\" --hand left | fingerturn annotate -");
  return command;
}

CLI::App* add_excerpt(CLI::App& program, AnnotateOptions& options) {
  CLI::App* command = program.add_subcommand(
      "excerpt", "Take some bars out of a score or passage, as a passage to work on");
  command->group("Commands");
  command
      ->add_option_function<std::string>(
          "FILE", [&options](const std::string& path) { options.inputs = {path}; },
          "A file in the passage notation or in MusicXML; - is standard input")
      ->required()
      ->type_name("");
  add_bars(*command, options, "Take these bars, as in 5-8")->required();
  add_hand(*command, options.hand,
           "Take this hand only; a MusicXML part of one staff is taken as this hand's");
  add_passage_and_part(*command, options);
  add_output(*command, options.output);
  options.format = Format::passage;
  command->footer(
      "Bars keep their numbers. Notes that turn otherwise than in the score, without\n"
      "what stands before or after, are named in comments.\n"
      "  fingerturn excerpt etude.musicxml --bars 5-8 --output etude-5-8.passage");
  return command;
}

CLI::App* add_compare(CLI::App& program, AnnotateOptions& options) {
  static const std::map<std::string, Format> kFormats{{"json", Format::json},
                                                      {"text", Format::text}};
  CLI::App* command = program.add_subcommand(
      "compare", "Put fingerings of the same notes side by side: where they differ, and in what");
  command->group("Commands");
  command
      ->add_option("FILE", options.inputs,
                   "One file, whose passages are compared with each other, or several, passage by "
                   "passage; - is standard input")
      ->required()
      ->type_name("");
  command->add_flag("--suggest", options.suggest,
                    "Fill in missing fingers first, and compare with what a model suggests when no "
                    "finger is given");
  add_choice(*command, "--format", kFormats, options.format, "text to read, json for programs");
  add_output(*command, options.output);
  add_choice_of_notes(*command, options);
  add_player(*command, options.analysis);
  add_text_looks(*command, options);
  command->footer(
      "The notes must be the same, and in the same order in each hand.\n"
      "  fingerturn compare printed.passage mine.passage\n"
      "  fingerturn compare etude.musicxml --suggest --bars 5-8");
  return command;
}

CLI::App* add_check(CLI::App& program, CheckOptions& options) {
  static const std::map<std::string, CheckFormat> kFormats{{"jsonl", CheckFormat::jsonl},
                                                           {"text", CheckFormat::text}};
  static const std::map<std::string, WatchLevel> kShown{
      {"caution", WatchLevel::caution}, {"info", WatchLevel::info}, {"strain", WatchLevel::strain}};
  static const std::map<std::string, std::optional<WatchLevel>> kLevels{
      {"caution", WatchLevel::caution},
      {"info", WatchLevel::info},
      {"never", std::nullopt},
      {"strain", WatchLevel::strain}};
  CLI::App* command = program.add_subcommand(
      "check", "Go through many files: what deserves a look, a line each, and the counts");
  command->group("Commands");
  command
      ->add_option("PATH", options.paths,
                   "Files, and folders with all passages and scores below them; - is standard "
                   "input. Files come in the order given, those of a folder by name")
      ->type_name("");
  command
      ->add_option("--files-from", options.list,
                   "Check the files named in this list too, one a line; - is standard input")
      ->type_name("LIST");
  add_choice(*command, "--format", kFormats, options.format,
             "text to read, jsonl for programs: a line for each file, then one for all");
  add_output(*command, options.output);
  add_hand(*command, options.hand, "Check this hand only");
  add_player(*command, options.analysis);
  add_suggest(*command, options.suggest);
  add_choice(*command, "--show", kShown, options.show,
             "Leave out findings below this level, info if not given; the counts are of all");
  add_choice(*command, "--fail-on", kLevels, options.fail_on,
             "End with status 1 where a finding is of this level or a graver one; never if not "
             "given");
  add_columns(*command, options.columns,
              "Make the text this wide; else as wide as the terminal, or, where there is none, the "
              "counts 80 and each finding a line");
  command
      ->add_option("--jobs", options.jobs,
                   "Work at this many files at a time; as many as the computer has cores if not "
                   "given. The result is the same")
      ->check(number_from(1, kMostJobs))
      ->type_name("N");
  command->footer(
      "Levels of findings: info, to know of; caution, to be careful with; strain,\n"
      "likely to strain the hand. fingerturn explain RULE tells more of each rule.\n"
      "  fingerturn check etudes --fail-on caution");
  return command;
}

CLI::App* add_explain(CLI::App& program, ExplainOptions& options) {
  CLI::App* command = program.add_subcommand("explain", "Put a rule or a message into words");
  command->group("Commands");
  command->add_option("NAME", options.name, "A rule or a message; without it, all are listed")
      ->type_name("");
  command->add_flag("--messages", options.messages, "Look among the messages only");
  command->add_flag("--markdown", options.markdown,
                    "Write all rules, or with --messages all messages, as one page");
  command->footer(
      "A name such as leap stands in watch lists and in what check finds; JSON names\n"
      "the rule for every note. What is wrong with a file ends with a name in brackets,\n"
      "such as [finger-range]. A word from a title shows what it is about.");
  return command;
}

}  // namespace fingerturn::cli
