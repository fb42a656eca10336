#pragma once

#include "fingerturn/score.hpp"

#include <vector>

namespace fingerturn {

/// The notes of an event that are struck, the lowest first.
std::vector<const Note*> struck_notes(const Event& event);

/// The MIDI note numbers of their keys.
std::vector<int> struck_keys(const Event& event);

}  // namespace fingerturn
