#pragma once

#include "read/musicxml/written_note.hpp"

#include <string>

namespace fingerturn {

/// Where something stands, as a musician finds it: "bar 12, right hand, beat 2.5", or without the
/// hand as long as that is not known.
std::string musical_place(const WrittenPart& part, const WrittenNote& note, Hand hand);
std::string musical_place(const WrittenPart& part, const WrittenMeasure& measure, Ticks tick);

}  // namespace fingerturn
