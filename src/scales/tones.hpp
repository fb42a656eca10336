#pragma once

#include "fingerturn/score.hpp"
#include "scales/task.hpp"

#include <vector>

namespace fingerturn {

/// Notes that one hand strikes together, each with its finger, the lowest first.
using Tone = std::vector<Note>;

/// What a hand plays, note by note. Where it turns it has the finger that leads on.
std::vector<Tone> tones_of(const HandTask& task);

}  // namespace fingerturn
