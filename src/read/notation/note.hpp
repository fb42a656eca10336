#pragma once

#include "fingerturn/pitch.hpp"
#include "fingerturn/score.hpp"
#include "read/notation/lexer.hpp"
#include "read/reporter.hpp"
#include "score/keys.hpp"

#include <array>
#include <cstdint>
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

/// What stands before a note in its hand, as far as the note depends on it.
struct NotesBefore {
  Hand hand = Hand::right;
  std::optional<Pitch> pitch;    ///< the last pitch, from which left-out octaves count
  std::optional<Pitch> earlier;  ///< the one before that
  /// The finger that is left on the last pitch; none where it is not known or the gesture has
  /// ended.
  std::optional<Finger> finger;
  bool same_word = false;  ///< the note joins a chord that has begun
  std::int32_t bar = 1;
  KeySignature key;  ///< what letters without a sign mean
  SignsInBar signs;
  /// In which bar it was last asked whether a sign was left out, for each letter.
  std::array<std::int32_t, 7> asked{-1, -1, -1, -1, -1, -1, -1};
  std::int32_t octave_asked = -1;  ///< in which bar it was last asked which octave is meant
};

/// Reads a word that stands for notes. `before` goes on to the last note that was read. Every
/// mistake in the word is reported; then there is no result.
std::optional<NoteWord> read_note_word(TextPiece word, NotesBefore& before, Reporter& reporter);

}  // namespace fingerturn
