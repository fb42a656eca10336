#pragma once

#include "read/musicxml/written_note.hpp"

#include <optional>
#include <vector>

namespace fingerturn {

/// The hand that the score names for each note of a part, where it names one. A sign holds for the
/// voice of the first note on its staff after it, until that voice rests or leaves the staff, or
/// the next sign.
std::vector<std::optional<Hand>> hands_by_signs(const WrittenPart& part);

}  // namespace fingerturn
