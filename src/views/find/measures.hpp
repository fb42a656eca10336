#pragma once

#include "fingerturn/find.hpp"
#include "score/struck_notes.hpp"

#include <optional>
#include <vector>

/// What patterns measure in events, found in music and taken from a figure alike.
namespace fingerturn {

/// There is one or more in an event that is struck.
using StruckNotes = std::vector<const Note*>;

/// The letters from the lowest note up to each other one.
std::vector<int> shape_of(const StruckNotes& struck);

/// All of how one pitch lies from another. On the same key it lies neither way.
WantedMove move_between(Pitch before, Pitch now);

/// The time from the second event to the third, against that from the first to the second; none
/// where it is not known, or the first two are at one time.
std::optional<Fraction> pace_of(const Event& first, const Event& second, const Event& third);

}  // namespace fingerturn
