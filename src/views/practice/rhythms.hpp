#pragma once

#include "views/practice/cutting.hpp"

#include <vector>

namespace fingerturn {

/// The longest run of equally quick single strokes of a hand in some bars, eight or more, in other
/// rhythms: long-short, short-long, and groups of three and four with a long last note that begin
/// on each note in turn (common practice, no source). None where there is no such run.
std::vector<PracticeMusic> rhythms_of(const Cutting& cutting, Hand hand, BarRange bars);

}  // namespace fingerturn
