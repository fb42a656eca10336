#pragma once

#include "fingerturn/analysed.hpp"
#include "write/musicxml/note_offsets.hpp"

#include <string>

/// A passage as a MusicXML score of its own: the music alone, into which marks are put as into any
/// other score.
namespace fingerturn {

struct PartwiseScore {
  std::string text;
  NoteOffsets offsets;  ///< of a note that is written as several, that of the first
};

/// A score-partwise of one part, a staff for each hand. Its given fingers are in it, those that are
/// suggested are marks. The times of the passage must be known.
PartwiseScore partwise_score(const AnalysedPassage& passage);

}  // namespace fingerturn
