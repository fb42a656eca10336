#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// Cases that are written down as text: tests/cases/*.cases and tests/published/*.cases.
///
///     # A line that begins with a hash is a comment.
///     case: five fingers down, right hand
///     source: common practice, no source
///     notes: hand: right / G4:5 F:4 E:3 D:2 C:1
///     kinds: preparatory single double double double
///     play: right left left left left
///
/// Blank lines part the cases. A line that begins with a blank goes on with the row above it. The
/// notes are in the passage notation, with " / " for the end of a line; one passage for one hand.
/// Every other row has one word for each event that is struck, "-" for none; bar lines may stand
/// in it, and then must stand where the bars end.
///
///     kinds, play        in every case with notes
///     prepare            left, right
///     swings             0, 1 or 2
///     crossing           thumb-under, finger-over-thumb, finger-crossing
///     carry              white keys to the right, or to the left where below 0
///     in-out             in, out
///     arcs               the number of the arc, from 0
///     rates              swings a second
///     rules, basis       the rule that decided, and rule, convention or none
///     reason 3           the whole sentence about the third event
///     watch              event:level:rule for each finding, "-" alone for none
///     finding 1          the whole sentence of the first finding
///     shows              further rules that the case is about
///     warnings           the codes of the warnings that the notes bring; without it there are none
///     remark             anything a reader should know
///
/// A case about keys has `pitches` and `keys` (MIDI note numbers) instead of notes.
///
/// In tests/cases each case names its `source`. In tests/published each names its author, title,
/// year, place and whether it is quoted as read, through a digest or from memory, and where there
/// is one its number; or else it says "source: common practice, no source".
namespace fingerturn {

struct CaseRow {
  std::string name;
  std::string value;
};

struct Case {
  std::string place;  ///< file and line, for messages
  std::vector<CaseRow> rows;

  /// The value of a row; empty where there is none.
  [[nodiscard]] std::string_view row(std::string_view name) const;
  [[nodiscard]] bool has(std::string_view name) const { return !row(name).empty(); }
};

enum class Collection { rules, published };

struct CaseFile {
  std::vector<Case> cases;
  std::vector<std::string> faults;  ///< what is wrong with the file itself
};

/// Reads the text of a file of cases.
CaseFile read_cases(const std::string& file_name, const std::string& text, Collection collection);

/// Reads all files of cases in a folder of the tests, such as "cases".
CaseFile read_case_folder(const std::string& folder, Collection collection);

/// The words of a row, without its bar lines.
std::vector<std::string> words_of_row(std::string_view value);

}  // namespace fingerturn
