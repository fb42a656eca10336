#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/diagnostic.hpp"
#include "fingerturn/read.hpp"
#include "fingerturn/score.hpp"
#include "fingerturn/source.hpp"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// What deserves a look in many files, and their counts: each file's findings with their places,
/// ready to be written a line each.
///
///     FileCheck found = check(source, read(source));
///     std::cout << write_findings(found, std::nullopt);
namespace fingerturn {

/// How a place is told: by line and column where a text was typed, by bar and beat in a score.
enum class Placing : std::uint8_t { line_and_column, bar_and_beat };

/// One thing that deserves a look, with its place.
struct PlacedFinding {
  std::string code;  ///< the id of the rule that found it, or the code of what the reader warned of
  WatchLevel level = WatchLevel::info;
  MusicalPlace where;   ///< in the score; its passage has its title in FileCheck::titles
  Place place;          ///< in the text that was read
  std::string message;  ///< one sentence for the player
};

/// Counts over the lines of all hands that were looked at, of one file or of several.
struct CheckCounts {
  std::size_t passages = 0;
  std::size_t events = 0;  ///< this and what follows as in Totals
  std::size_t fingered = 0;
  std::size_t preparatory = 0;
  std::size_t single_rotations = 0;
  std::size_t double_rotations = 0;
  std::size_t level_events = 0;
  std::size_t undetermined = 0;
  std::size_t crossings = 0;
  WatchCounts watch;

  void add(const Totals& line) noexcept;
  void add(const CheckCounts& other) noexcept;
  friend bool operator==(const CheckCounts&, const CheckCounts&) = default;
};

/// The counts of one file, or why there are none.
struct FileCounts {
  std::string source;  ///< the name it came under
  std::string error;   ///< empty where it could be read
  CheckCounts counts;

  [[nodiscard]] bool ok() const noexcept { return error.empty(); }
};

/// The counts of all files together.
struct AllCounts {
  std::size_t read = 0;
  std::size_t failed = 0;  ///< files that could not be read
  CheckCounts counts;

  void add(const FileCounts& file) noexcept;
};

/// What was found in one file.
struct FileCheck {
  FileCounts file;
  Placing placing = Placing::line_and_column;
  std::vector<std::string> titles;      ///< one for each passage, empty where it has none
  std::vector<PlacedFinding> findings;  ///< in the order of the source
};

/// What is looked for. Everything else is neither listed nor counted.
struct CheckChoice {
  std::optional<Hand> hand = std::nullopt;  ///< none for both
  std::vector<std::string> only = {};       ///< rules and codes; all where there are none
  std::vector<std::string> leave_out = {};  ///< and not these

  [[nodiscard]] bool takes(std::string_view code) const noexcept;
  /// Whether a rule was asked for by its name.
  [[nodiscard]] bool names(std::string_view code) const noexcept;
};

/// Gathers what the rules and the reader found. Fingers that are missing are one finding for each
/// hand, with their share, unless their rule was asked for by its name. Where the source could not
/// be read, only `file.error` is set, to the first error.
FileCheck check(const Source& source, ReadResult result, const AnalyseOptions& options = {},
                const CheckChoice& choice = {});

/// A line of an earlier check.
struct CheckLineResult {
  std::optional<FileCheck> check;  ///< none where the line is that of all files
  std::string problem;  ///< "expected ...", one line, where it is no such line; else empty

  [[nodiscard]] bool ok() const noexcept { return problem.empty(); }
};

/// Reads a line that `write_check_jsonl` wrote: writing what was read gives the line again. Any
/// bytes may come in. Titles and how places are told, which version 0.1.0 did not write, may be
/// left out.
CheckLineResult read_check_line(std::string_view line);

/// Whether a reader's warning is listed among the findings, as one for caution.
bool is_finding(const Diagnostic& diagnostic) noexcept;

/// Findings that are known from an earlier check, by the name of their file.
struct CheckBaseline {
  /// What tells each finding from others, however lines have moved; sorted.
  std::map<std::string, std::vector<std::string>, std::less<>> known;
};

struct CheckBaselineResult {
  CheckBaseline baseline;
  std::string problem;  ///< "3: expected ...", for a person, one line; else empty

  [[nodiscard]] bool ok() const noexcept { return problem.empty(); }
};

/// Reads the lines that `write_check_jsonl` wrote. Any bytes may come in; more than
/// kLargestMusicXml are refused.
CheckBaselineResult read_check_baseline(const Source& source);

/// Takes the findings that are known out of a file's, and out of its counts: each as often as it is
/// known.
void leave_out_known(FileCheck& check, const CheckBaseline& baseline);

/// A line for each finding. Where `columns` is given, longer lines are continued, indented:
///
///     scale.passage:3:18: bar 1, right hand, beat 3: caution: The ... [crossed-in-chord]
///     etude.musicxml: bar 12, right hand, beat 2.5: info: The finger is missing. [missing-finger]
std::string write_findings(const FileCheck& check, std::optional<int> columns);
/// The table of the counts, a row for each file and one for all, with its legend, what was
/// looked for where not for all, and the caution.
std::string write_counts(std::span<const FileCounts> files, const AllCounts& all, int columns,
                         const CheckChoice& choice = {});

/// A list of the findings of a file, under its name, and a table of the counts with the caution: a
/// summary to be read beside a change, in Markdown. Nothing of a file in which nothing is found.
std::string write_check_markdown(const FileCheck& check);
std::string write_check_markdown(std::span<const FileCounts> files, const AllCounts& all);

/// One line of JSON for a file, and the one at the end for all; docs/check.schema.json describes
/// both.
std::string write_check_jsonl(const FileCheck& check);
std::string write_check_jsonl(const AllCounts& all);

}  // namespace fingerturn
