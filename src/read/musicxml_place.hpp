#pragma once

#include "read/written_note.hpp"

#include <string>

namespace fingerturn {

/// Where a note stands, as a musician finds it: "bar 12, right hand, beat 2.5".
std::string musical_place(const WrittenPart& part, const WrittenNote& note, Hand hand);

}  // namespace fingerturn
