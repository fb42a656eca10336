#pragma once

#include "fingerturn/analysis.hpp"
#include "write/shared/used.hpp"

#include <string>

/// What is written under the notes of a score, and the legend that explains it.
namespace fingerturn {

/// The sign of an event: an arrow the way it plays, doubled for a double rotation, with a stroke
/// where it starts from for a preparatory one. Or the same in words.
///
///     single →   double ⇒   preparatory |→   level =   undetermined ?
std::string score_sign(const EventAnalysis& event, Hand hand, bool words);

/// The legend with the caution, in lines that each end with a line feed. `visits` tells whether a
/// sign stands one line lower.
std::string score_legend(const Used& used, bool visits, bool words);

}  // namespace fingerturn
