#pragma once

#include <string>
#include <string_view>
#include <vector>

/// Case files: what a reader makes of a text, as data. A file holds many cases:
///
///     # Lines before the first case are comments.
///     == two notes, the second without its octave
///     C4:1 D:2
///     -- score
///     passage ""
///     right hand
///     1  ?  ?  C4:1
///     1  ?  ?  D4:2
///     -- messages
///
/// A case has a title, then the text that is read. `-- score` is what becomes of it, as
/// tests/score/score_text.hpp writes it (blanks do not matter); without it the score is not looked
/// at. `-- messages` is all that is reported, byte for byte; without it nothing may be reported.
/// Blank lines at the end of either do not count.
///
/// In tests/cases/musicxml a text that begins with <measure is the inside of a score of one part.
///
/// In the text that is read, `\t` is a tab, `\r` a carriage return, `\xFF` the byte of that number,
/// `\\` a backslash, and a backslash at the end of a line means that the line does not end there.
namespace fingerturn::tests {

struct ReadingCase {
  std::string title;
  std::string text;
  std::string score;
  std::string messages;
  bool score_given = false;
};

/// The cases of a file; throws std::runtime_error where it is not as described.
std::vector<ReadingCase> cases_in(std::string_view file_text);

/// Blanks within lines made one, those around lines and empty lines at the end left out.
std::string without_spare_blanks(std::string_view text);

}  // namespace fingerturn::tests
