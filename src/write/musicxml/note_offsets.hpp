#pragma once

#include "fingerturn/score.hpp"

#include <cstdint>
#include <optional>
#include <unordered_map>

namespace fingerturn {

/// Where the `<note>` of each note of a score begins in a text that was made from it.
using NoteOffsets = std::unordered_map<const Note*, std::uint32_t>;

}  // namespace fingerturn
