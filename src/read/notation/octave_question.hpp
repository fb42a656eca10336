#pragma once

#include "fingerturn/score.hpp"
#include "read/notation/lexer.hpp"
#include "read/notation/note.hpp"
#include "read/reporter.hpp"

namespace fingerturn {

/// Asks which octave is meant where it was left out and the nearest one lies on the wrong side of
/// the note before it for the fingers, while the other one lies in the hand. Once in a bar.
void ask_for_octave(const Note& note, Pitch from, TextPiece word, NotesBefore& before,
                    Reporter& reporter);

}  // namespace fingerturn
