#include "cli/commands.hpp"
#include "cli/faults.hpp"
#include "cli/input.hpp"
#include "cli/input_lines.hpp"
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
#include "cli/rule_names.hpp"
#include "cli/terminal.hpp"
#include "cli/through_files.hpp"
#include "fingerturn/fingerturn.hpp"

#include <algorithm>
#include <array>
#include <exception>
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

struct CheckFormat;

/// What the command line of `check` asks for.
struct CheckOptions {
  Library library;
  bool join = false;                    ///< the paths are lines of earlier checks
  const CheckFormat* format = nullptr;  ///< one of kCheckFormats
  std::string output;                   ///< empty for standard output
  CheckChoice choice;                   ///< what is looked for
  WatchLevel show = WatchLevel::info;   ///< findings below it are counted only
  std::optional<WatchLevel> fail_on;    ///< none for no level
  AnalyseOptions player;
  std::optional<int> columns;  ///< none for the terminal's width, and one line for each finding
                               ///< where there is no terminal
  bool suggest = false;        ///< fill in missing fingers first
  std::string baseline_path;   ///< lines of an earlier check; empty for none
  CheckBaseline baseline;      ///< what they know
};

using Rows = std::vector<FileCounts>;

/// A format of what is found.
struct CheckFormat {
  std::string_view name;
  std::string_view purpose;  ///< what it is for, in the words of help
  std::string (*write_file)(const FileCheck& found, const CheckOptions& options);
  /// What stands at the end. The rows are there only where it is read.
  std::string (*write_all)(const Rows& rows, const AllCounts& all, const CheckOptions& options);
  bool is_read;  ///< by people, not by programs
};

using Checked = FromFile<FileCounts>;

/// What a reader had to say beyond what is listed as a finding.
Diagnostics without_findings(Diagnostics diagnostics) {
  diagnostics.warnings -= std::erase_if(diagnostics.kept, is_finding);
  return diagnostics;
}

std::string findings(const FileCheck& found, const CheckOptions& options) {
  return write_findings(found, line_columns(options.columns, options.output));
}

/// The table that closes the text.
std::string counts(const Rows& rows, const AllCounts& all, const CheckOptions& options) {
  if (all.read == 0) return {};
  return (all.counts.watch.reaches(options.show) ? "\n" : "") +
         write_counts(rows, all, options.columns.value_or(terminal_columns()), options.choice);
}

std::string file_line(const FileCheck& found, const CheckOptions& /*options*/) {
  return write_check_jsonl(found);
}

std::string line_for_all(const Rows& /*rows*/, const AllCounts& all,
                         const CheckOptions& /*options*/) {
  return write_check_jsonl(all);
}

std::string file_summary(const FileCheck& found, const CheckOptions& /*options*/) {
  return write_check_markdown(found);
}

std::string summary(const Rows& rows, const AllCounts& all, const CheckOptions& /*options*/) {
  return all.read == 0 ? "" : write_check_markdown(rows, all);
}

constexpr std::array kCheckFormats{
    CheckFormat{"text", "to read", findings, counts, true},
    CheckFormat{"markdown", "for a summary beside a change", file_summary, summary, true},
    CheckFormat{"jsonl", "for programs: a line for each file, then one for all", file_line,
                line_for_all, false},
};

FileCheck check_source(const Source& source, const CheckOptions& options, std::string& messages) {
  ReadResult result = read(source, {options.choice.hand, std::nullopt});
  if (options.suggest && result.ok()) {
    result.score = with_suggestions(std::move(result.score), {options.player.reach_semitones, 1});
  }
  messages = render(text_read(result, source), without_findings(result.diagnostics));
  return fingerturn::check(source, std::move(result), options.player, options.choice);
}

/// Leaves the counts as they are.
void leave_out_lower(std::vector<PlacedFinding>& findings, WatchLevel least) {
  std::erase_if(findings, [least](const PlacedFinding& finding) { return finding.level < least; });
}

/// What of a file is to be said, and its counts.
void write(FileCheck found, const CheckOptions& options, Checked& checked) {
  leave_out_known(found, options.baseline);
  leave_out_lower(found.findings, options.show);
  checked.text = options.format->write_file(found, options);
  checked.result = std::move(found.file);
}

Checked check_file(const LibraryFile& file, const CheckOptions& options) {
  Input input;
  input.name = file.path;
  input.problem = file.problem;
  if (input.problem.empty()) input = load_input(file.path);
  Checked checked;
  FileCheck found;
  if (input.source) {
    found = check_source(*input.source, options, checked.messages);
  } else {
    found.file = {input.name, input.problem, {}};
    checked.messages = message_line(input.name + ": " + input.problem);
  }
  write(std::move(found), options, checked);
  return checked;
}

/// A file whose check went wrong is one that could not be read; the others are still done.
Checked check_whatever_happens(const LibraryFile& file, const CheckOptions& options) {
  FileCheck found;
  try {
    return check_file(file, options);
  } catch (const std::exception& problem) {
    found.file = {file.path, fault_words(problem), {}};
  }
  return {found.file, options.format->write_file(found, options),
          message_line(file.path + ": " + found.file.error)};
}

/// A hand that plays in some files only has nothing to be found in the others; one that plays in
/// none was asked for by mistake.
ExitStatus status_of(const AllCounts& all, const CheckOptions& options) {
  if (all.failed > 0) return ExitStatus::input_failed;
  if (options.choice.hand && all.counts.events == 0) {
    say(fmt::format("nothing is played by the {} hand in what was checked",
                    to_string(*options.choice.hand)));
    return ExitStatus::wrong_usage;
  }
  const bool found = options.fail_on && all.counts.watch.reaches(*options.fail_on);
  return found ? ExitStatus::answer : ExitStatus::done;
}

/// What all files come to.
struct Sum {
  AllCounts all;
  Rows rows;  ///< where they are read

  void add(FileCounts counts, const CheckOptions& options) {
    all.add(counts);
    if (options.format->is_read) rows.push_back(std::move(counts));
  }
};

Sum check_files(const std::vector<LibraryFile>& files, const CheckOptions& options,
                Output& output) {
  Sum sum;
  const auto make = [&](const LibraryFile& file) { return check_whatever_happens(file, options); };
  const auto take = [&](FileCounts counts) { sum.add(std::move(counts), options); };
  through_files(files, options.library, output, options.format->is_read, make, take);
  return sum;
}

/// Why a line of an earlier check does not go with what is asked for; empty where it does.
std::string line_problem(const CheckLineResult& line, const CheckChoice& choice) {
  if (!line.ok() || !line.check) return line.problem;
  for (const PlacedFinding& finding : line.check->findings) {
    const bool of_hand = !choice.hand || !finding.where.hand || finding.where.hand == choice.hand;
    if (choice.takes(finding.code) && of_hand) continue;
    return fmt::format(
        "expected what --hand, --only and --leave-out take, found {}; join lines "
        "with the options that they were made with",
        finding.code);
  }
  return {};
}

void take_line(FileCheck check, const CheckOptions& options, Output& output, Sum& sum) {
  Checked checked;
  if (!check.file.ok()) say(check.file.source + ": " + check.file.error);
  write(std::move(check), options, checked);
  output.write(checked.text);
  sum.add(std::move(checked.result), options);
}

/// Takes the lines of earlier checks, file after file, as what was found; false, and messages,
/// where some are none, or the line that closes a check is not the last, since it was cut short.
/// The others are taken all the same, but for those of what is no such file at all.
bool join_lines(const LibraryFile& file, const CheckOptions& options, Output& output,
                Progress& progress, Sum& sum) {
  constexpr int kMostWrong = 3;
  int wrong = 0;
  bool is_closed = false;
  const std::string name = input_name(file.path);
  InputLines lines(file.path);
  while (const std::optional<std::string_view> text =
             wrong < kMostWrong ? progress.during([&] { return lines.next(); }) : std::nullopt) {
    progress.turn_to(fmt::format("{}: {} lines", name, lines.number()));
    CheckLineResult line = read_check_line(*text);
    const std::string problem = line_problem(line, options.choice);
    is_closed = problem.empty() && !line.check;
    if (!problem.empty()) {
      say(fmt::format("{}:{}: {}", name, lines.number(), problem));
      ++wrong;
    } else if (line.check) {
      take_line(std::move(*line.check), options, output, sum);
    }
  }
  if (!lines.problem().empty()) {
    say(name + ": " + lines.problem());
  } else if (wrong == 0 && !is_closed) {
    say(name + ": expected the line for all files at the end; the check was cut short");
  }
  return wrong == 0 && is_closed && lines.problem().empty();
}

/// False, and a message, where the earlier check cannot be read.
bool read_baseline(CheckOptions& options) {
  const std::optional<Source> source = read_input(options.baseline_path);
  if (!source) return false;
  CheckBaselineResult result = read_check_baseline(*source);
  if (!result.ok()) say(fmt::format("{}:{}", source->name(), result.problem));
  options.baseline = std::move(result.baseline);
  return result.ok();
}

/// What deserves a look in many files, and their counts.
ExitStatus check(CheckOptions options) {
  const LibraryFiles found = files_of(options.library, {options.baseline_path});
  if (found.status != ExitStatus::done) return found.status;
  if (!options.baseline_path.empty() && !read_baseline(options)) return ExitStatus::input_failed;
  Output output(options.output);
  if (!output.open(found.inputs_for(options.output))) return ExitStatus::wrong_usage;
  Sum sum;
  bool all_joined = true;
  if (options.join) {
    Progress progress(has_room_for_progress(found.files, output, options.format->is_read));
    all_joined = !found.files.empty();
    for (const LibraryFile& file : found.files) {
      all_joined &= join_lines(file, options, output, progress, sum);
    }
  } else {
    sum = check_files(found.files, options, output);
  }
  output.write(options.format->write_all(sum.rows, sum.all, options));
  const ExitStatus status = all_joined ? status_of(sum.all, options) : ExitStatus::input_failed;
  // A text without any file in it would say nothing.
  if (options.format->is_read && sum.all.read == 0) return status;
  return output.finish() ? status : ExitStatus::wrong_usage;
}

/// The names of sections of the rules become those of their rules.
void spread_sections(std::vector<std::string>& names) {
  std::vector<std::string> spread;
  for (const std::string& name : names) {
    for (std::string& meant : names_meant(name)) spread.push_back(std::move(meant));
  }
  names = std::move(spread);
}

void add_rules(CLI::App& line, const std::string& name, std::vector<std::string>& rules,
               const std::string& help) {
  line.add_option(name, rules, help + "; fingerturn explain lists them")
      ->delimiter(',')
      ->allow_extra_args(false)
      ->type_name("RULE,...")
      ->check([](const std::string& rule) {
        return names_meant(rule).empty()
                   ? fmt::format("expected a rule, found \"{}\"; {}", rule, hint_for_name(rule))
                   : std::string();
      });
}

}  // namespace

Command add_check(CLI::App& program) {
  CLI::App* line = program.add_subcommand(
      "check", "Go through many files: what deserves a look, a line each, and the counts");
  const auto options = std::make_shared<CheckOptions>();
  line->add_option("PATH", options->library.paths,
                   "Files, and folders with all passages and scores below them; - is standard "
                   "input. Files come in the order given, those of a folder by name")
      ->type_name("");
  add_library(*line, options->library);
  line->add_flag(
      "--join", options->join,
      "The files are lines of earlier checks (--format jsonl): what all of them come to, "
      "as if one check had made them");
  add_format(*line, kCheckFormats, options->format);
  add_output(*line, options->output);
  add_hand(*line, options->choice.hand, "Check this hand only");
  add_player(*line, options->player);
  add_suggest(*line, options->suggest);
  add_choice(*line, "--show",
             {{"caution", WatchLevel::caution},
              {"info", WatchLevel::info},
              {"strain", WatchLevel::strain}},
             options->show,
             "Leave out findings below this level, info if not given; the counts are of all");
  add_rules(*line, "--only", options->choice.only, "Look for these rules only, as in twist,leap");
  add_rules(*line, "--leave-out", options->choice.leave_out, "Look for all rules but these");
  add_choice(*line, "--fail-on",
             {{"caution", WatchLevel::caution},
              {"info", WatchLevel::info},
              {"never", std::nullopt},
              {"strain", WatchLevel::strain}},
             options->fail_on,
             "End with status 1 where a finding is of this level or a graver one; never if not "
             "given");
  line->add_option("--baseline", options->baseline_path,
                   "List and count only what is new since these lines of an earlier check "
                   "(--format jsonl)")
      ->type_name("FILE");
  add_columns(*line, options->columns,
              "Make the text this wide; else as wide as the terminal, or, where there is none, the "
              "counts 80 and each finding a line");
  line->footer(
      "Levels of findings: info, to know of; caution, to be careful with; strain,\n"
      "likely to strain the hand. fingerturn explain RULE tells more of each rule.\n"
      "  fingerturn check etudes --fail-on caution");
  return {line, [options] {
            spread_sections(options->choice.only);
            spread_sections(options->choice.leave_out);
            return check(*options);
          }};
}

}  // namespace fingerturn::cli
