#pragma once

#include "fingerturn/pitch.hpp"
#include "fingerturn/score.hpp"
#include "read/notation/lexer.hpp"
#include "read/reporter.hpp"

#include <optional>
#include <vector>

namespace fingerturn {

/// What a word such as "^C4:1+E:3>2~" says.
struct NoteWord {
  bool grace = false;
  /// Notes that are struck together, lowest key first; in a rolled chord such as C4:1/E:3/G:5 one
  /// after another.
  std::vector<std::vector<Note>> struck;
};

/// Reads a word that stands for notes. `running` is the pitch from which left-out octaves count;
/// it goes on to the last pitch that was read. Every mistake in the word is reported; then there
/// is no result.
std::optional<NoteWord> read_note_word(TextPiece word, std::optional<Pitch>& running,
                                       Reporter& reporter);

}  // namespace fingerturn
