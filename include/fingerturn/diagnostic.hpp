#pragma once

#include "fingerturn/diagnostic_code.hpp"
#include "fingerturn/score.hpp"
#include "fingerturn/source.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace fingerturn {

/// One thing that is wrong with a source, at its place.
struct Diagnostic {
  Severity severity = Severity::error;
  std::string_view code;    ///< the id of its DiagnosticCode
  Span span;                ///< where it is
  std::string message;      ///< what was expected and what was found
  std::string hint;         ///< a likely cure; empty where there is none
  MusicalPlace where = {};  ///< in a score; of a typed passage the span says it
};

/// The message with its musical place and what the reader did, in one line.
///
///     expected a finger from 1 to 5, found "8", in bar 12, right hand, beat 2.5
std::string full_message(const Diagnostic& diagnostic);

/// How many diagnostics of one source are kept and shown; the rest are counted.
inline constexpr std::size_t kMostDiagnostics = 50;

/// What a reader had to say, in the order of the source once `sort` was called. Errors push
/// warnings out when there are too many of both.
struct Diagnostics {
  std::vector<Diagnostic> kept;  ///< at most kMostDiagnostics
  std::size_t errors = 0;        ///< all of them, kept or not
  std::size_t warnings = 0;

  void add(Diagnostic diagnostic);
  void sort();
};

/// One diagnostic as text: file, line and column, message and code, the source line with a mark
/// under the place, and the hint. Control characters never reach the terminal.
///
///     demo/lantern.passage:3:18: error: expected a finger from 1 to 5, found "6" [finger-range]
///       C4:1 D:2 E:3 F:6 |
///                      ^
///       hint: write one digit after the colon, as in F:4
std::string render(const Source& source, const Diagnostic& diagnostic);
/// All of them, then how many more there were.
std::string render(const Source& source, const Diagnostics& diagnostics);

/// The first error in one line: "line 1, column 4: expected ..., found ... [finger-range]".
std::string first_error(const Source& source, const Diagnostics& diagnostics);

}  // namespace fingerturn
