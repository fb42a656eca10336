#include "cli/commands.hpp"
#include "cli/faults.hpp"
#include "cli/help_format.hpp"
#include "cli/input.hpp"
#include "cli/messages.hpp"
#include "cli/options/fingers.hpp"
#include "cli/options/format.hpp"
#include "cli/options/library.hpp"
#include "cli/options/look.hpp"
#include "cli/options/notes.hpp"
#include "cli/options/output.hpp"
#include "cli/options/player.hpp"
#include "cli/options/value.hpp"
#include "cli/output.hpp"
#include "cli/progress.hpp"
#include "cli/score_input.hpp"
#include "cli/terminal.hpp"
#include "cli/through_files.hpp"
#include "fingerturn/fingerturn.hpp"
#include "text/wrap.hpp"

#include <algorithm>
#include <array>
#include <exception>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace fingerturn::cli {
namespace {

struct FindFormat {
  std::string_view name;
  std::string_view purpose;  ///< what it is for, in the words of help
  bool is_read;              ///< by people, not by programs
};

constexpr std::array kFindFormats{
    FindFormat{"text", "to read", true},
    FindFormat{"jsonl", "for programs: a line for each place, then one for all", false},
};

/// Words of patterns that stand for many, as help tells them.
constexpr std::array<std::pair<const char*, const char*>, 6> kOtherWords{{
    {"4 1+3+5 1+.", "the fingers that strike, the lowest note first; . for any of them"},
    {"third up-third down-minor-third", "the interval from the note before"},
    {"thirds sixths octaves", "double notes of this interval"},
    {"twist leap same-finger",
     "a rule that decided or found something there; fingerturn explain "
     "lists them"},
    {"x4 x4+", "behind an event, or behind several in brackets: so many times in a row, or more"},
    {"LH: RH:", "at the beginning: the hand"},
}};

/// What the command line of `find` asks for.
struct FindOptions {
  std::string pattern;  ///< empty where a figure is looked for
  std::string figure;   ///< the file with it; empty for none
  Likeness likeness;
  Library library;
  const FindFormat* format = nullptr;  ///< one of kFindFormats
  std::string output;                  ///< empty for standard output
  std::optional<Hand> hand;
  AnalyseOptions player;
  FoundStyle style;
  bool suggest = false;  ///< fill in missing fingers first
  bool count = false;    ///< only how many places there are in each file
  bool rank = false;     ///< the same, by how much of the file they are
};

using FoundInFile = FromFile<FoundCounts>;

/// Analyses what was read and looks through it.
void look_through(const Source& source, ReadResult result, const FindOptions& options,
                  const Finder& finder, FoundInFile& found) {
  if (options.suggest) {
    result.score = with_suggestions(std::move(result.score), {options.player.reach_semitones, 1});
  }
  const Source* text =
      form_of(source) == SourceForm::packed_musicxml ? nullptr : &text_read(result, source);
  const AnalysedScore score(source.name(), std::move(result.score), options.player);
  const std::vector<FoundPlace> places = finder.in(score, text);
  found.result = count_found(score, finder, places);
  if (options.count || options.rank) return;
  found.text = options.format->is_read ? write_found(score, places, options.style)
                                       : write_found_jsonl(score, places);
}

FoundInFile not_read(const std::string& name, std::string problem, const FindOptions& options) {
  FoundInFile found;
  found.messages = message_line(name + ": " + problem);
  found.result.source = name;
  found.result.error = std::move(problem);
  if (!options.format->is_read) found.text = write_found_jsonl(found.result);
  return found;
}

FoundInFile find_in_file(const LibraryFile& file, const FindOptions& options,
                         const Finder& finder) {
  if (!file.problem.empty()) return not_read(file.path, file.problem, options);
  const Input input = load_input(file.path);
  if (!input.source) return not_read(input.name, input.problem, options);
  ReadResult result = read(*input.source, {options.hand, std::nullopt});
  if (!result.ok()) {
    const Source& text = text_read(result, *input.source);
    FoundInFile found = not_read(input.name, first_error(text, result.diagnostics), options);
    found.messages = render(text, result.diagnostics);
    return found;
  }
  FoundInFile found;
  look_through(*input.source, std::move(result), options, finder, found);
  return found;
}

/// A file in which something went wrong is one that could not be read; the others are still done.
FoundInFile find_whatever_happens(const LibraryFile& file, const FindOptions& options,
                                  const Finder& finder) {
  try {
    return find_in_file(file, options, finder);
  } catch (const std::exception& problem) {
    return not_read(file.path, fault_words(problem), options);
  }
}

/// What is to be looked for; none where that cannot be known, which has been said.
FindPatternResult wanted(const FindOptions& options, ExitStatus& status) {
  if (options.figure.empty()) return parse_find_pattern(options.pattern);
  ChosenNotes notes;
  notes.hand = options.hand;
  Progress progress(false);  // a figure is short
  const ScoreInput figure = read_score(options.figure, notes, progress);
  status = figure.status;
  if (status != ExitStatus::done) return {};
  return pattern_like(figure.score, options.likeness);
}

/// False where the pattern is of one hand and the other is asked for.
bool agree_on_hand(const FindOptions& options, FindPattern& pattern) {
  if (!options.hand) return true;
  if (pattern.hand && *pattern.hand != *options.hand) return false;
  pattern.hand = options.hand;
  return true;
}

AllFound find_in_files(const std::vector<LibraryFile>& files, const FindOptions& options,
                       const Finder& finder, Output& output) {
  AllFound all;
  std::vector<FoundCounts> rows;
  const auto make = [&](const LibraryFile& file) {
    return find_whatever_happens(file, options, finder);
  };
  const auto take = [&](FoundCounts counts) {
    all.add(counts);
    if (options.count || options.rank) rows.push_back(std::move(counts));
  };
  through_files(files, options.library, output, options.format->is_read, make, take);
  if (!options.format->is_read) {
    output.write(write_found_jsonl(all));
    return all;
  }
  output.write(write_found_counts(rows, options.rank));
  output.write(write_found_sum(all, options.style.columns.value_or(terminal_columns())));
  return all;
}

/// Where a figure is given, the first word is a path like the others.
void settle_words(FindOptions& options) {
  if (options.figure.empty() || options.pattern.empty()) return;
  options.library.paths.insert(options.library.paths.begin(), std::move(options.pattern));
  options.pattern.clear();
}

/// Why it cannot be done as asked; empty where it can.
std::string usage_problem(const FindOptions& options) {
  if (options.pattern.empty() && options.figure.empty()) {
    return "say what to look for, as in fingerturn find \"double x5+\" etudes, or give a figure "
           "with --like";
  }
  if (options.figure.empty() && (options.likeness.any_fingers || options.likeness.same_keys)) {
    return "--any-fingers and --same-keys are for --like";
  }
  if (!options.format->is_read && (options.count || options.rank)) {
    return "--count and --rank are for reading; jsonl has a line for each place";
  }
  return {};
}

/// The pattern, or why there is none, in the words of whoever gave it.
FindPatternResult wanted_pattern(const FindOptions& options, ExitStatus& status) {
  FindPatternResult pattern = wanted(options, status);
  if (!pattern.ok() || agree_on_hand(options, *pattern.pattern)) return pattern;
  return {std::nullopt, "the pattern is of one hand, and --hand of the other"};
}

ExitStatus find(FindOptions options) {
  settle_words(options);
  if (const std::string problem = usage_problem(options); !problem.empty()) {
    say(problem);
    return ExitStatus::wrong_usage;
  }
  options.style.columns = line_columns(options.style.columns, options.output);
  ExitStatus status = ExitStatus::done;
  FindPatternResult pattern = wanted_pattern(options, status);
  if (status != ExitStatus::done) return status;
  if (!pattern.ok()) {
    say((options.figure.empty() ? "pattern" : input_name(options.figure)) + ": " + pattern.problem);
    return ExitStatus::wrong_usage;
  }
  const LibraryFiles found = files_of(options.library, {options.figure});
  if (found.status != ExitStatus::done) return found.status;
  Output output(options.output);
  if (!output.open(found.inputs_for(options.output))) return ExitStatus::wrong_usage;
  const AllFound all =
      find_in_files(found.files, options, Finder(std::move(*pattern.pattern)), output);
  // A text without any file in it would say nothing.
  const bool says_something = !options.format->is_read || all.read > 0 || all.failed == 0;
  if (says_something && !output.finish()) return ExitStatus::wrong_usage;
  if (all.failed > 0) return ExitStatus::input_failed;
  if (all.places > 0) return ExitStatus::done;
  if (options.format->is_read) {
    say(fmt::format("found nowhere in {} file{}", all.read, all.read == 1 ? "" : "s"));
  }
  return ExitStatus::answer;
}

/// Manual pages indent what stands in help.
constexpr int kFooterColumns = kHelpColumns - 8;

/// The words of patterns, those of one meaning together, and how they are put together.
std::string find_footer() {
  std::string text = "A pattern has a word for each event in a row, or several joined by commas:\n";
  const std::vector<FindWord> known = find_words();
  for (std::size_t at = 0; at < known.size();) {
    const std::string_view meaning = known[at].meaning;
    std::string words;
    for (; at < known.size() && known[at].meaning == meaning; ++at) {
      words += fmt::format("{}{}", words.empty() ? "" : " ", known[at].word);
    }
    text += described(words, std::string(meaning), kFooterColumns);
  }
  for (const auto& [words, meaning] : kOtherWords)
    text += described(words, meaning, kFooterColumns);
  return text +
         "  fingerturn find 'LH: double x5+' etudes --rank\n"
         "  fingerturn find 'thumb-under,black' etudes\n"
         "  fingerturn excerpt etude.musicxml --bars 12 --hand right |\n"
         "    fingerturn find --like - etudes";
}

}  // namespace

Command add_find(CLI::App& program) {
  constexpr int kMostAround = 1000;
  CLI::App* line = program.add_subcommand(
      "find", "Look in many files for places where something happens, or like a figure");
  const auto options = std::make_shared<FindOptions>();
  line->add_option("PATTERN", options->pattern,
                   "What to look for, event by event, as below; left out with --like")
      ->type_name("");
  line->add_option(
          "PATH", options->library.paths,
          "Files, and folders with all passages and scores below them; - is standard input")
      ->type_name("");
  line->add_option("--like", options->figure,
                   "Look for places like the passage of one hand in this file: the same steps, "
                   "rhythm and fingers, transposed or not")
      ->type_name("PASSAGE");
  line->add_flag("--any-fingers", options->likeness.any_fingers,
                 "With --like: whatever fingers there are");
  line->add_flag("--same-keys", options->likeness.same_keys, "With --like: not transposed");
  add_library(*line, options->library);
  add_format(*line, kFindFormats, options->format);
  add_output(*line, options->output);
  line->add_flag("--count", options->count,
                 "Only how many places there are in each file that has any");
  line->add_flag("--rank", options->rank,
                 "The same, the files first of whose events most are in such places");
  line->add_option("--around", options->style.around,
                   "Below each place its bars, and so many before and after them")
      ->check(number_from(0, kMostAround))
      ->type_name("BARS");
  add_hand(*line, options->hand, "Look at this hand only");
  add_player(*line, options->player);
  add_suggest(*line, options->suggest);
  add_columns(*line, options->style.columns,
              "Make the text this wide; else as wide as the terminal, or, where there is none, a "
              "line for each place");
  line->footer(find_footer());
  return {line, [options] { return find(*options); }};
}

}  // namespace fingerturn::cli
