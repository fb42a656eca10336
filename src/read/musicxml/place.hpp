#pragma once

#include "read/musicxml/written_note.hpp"

namespace fingerturn {

/// Where something stands in its passage, without the hand as long as that is not known. Where no
/// meter is written, beats are quarter notes.
MusicalPlace musical_place(const WrittenPart& part, const WrittenNote& note, Hand hand);
MusicalPlace musical_place(const WrittenPart& part, const WrittenMeasure& measure, Ticks tick);

}  // namespace fingerturn
