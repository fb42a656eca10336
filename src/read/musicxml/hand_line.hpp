#pragma once

#include "read/musicxml/written_note.hpp"

#include <vector>

namespace fingerturn {

/// The line of one hand from its notes, in any number of voices: an event for each moment at which
/// something begins, lasting until the next or until all is silent, and rests between. Notes of
/// one key at one moment are one note. `measures` and `ticks_per_quarter` are those of the notes.
Line line_of_notes(Hand hand, std::vector<WrittenNote> notes,
                   const std::vector<WrittenMeasure>& measures, Ticks ticks_per_quarter);

}  // namespace fingerturn
