#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"
#include "rules/strike.hpp"

#include <cstddef>
#include <optional>
#include <span>

namespace fingerturn {

inline constexpr Rule kFirstNoteRule{
    "first-note", "2.3", "First note of a gesture",
    "The first note of a gesture is preparatory: nothing before it has prepared it, so the forearm "
    "first swings away from the side that it is about to play, and two swings are made. It plays "
    "toward the side opposite to that of the first step that follows and has a side, so that this "
    "step is a single rotation: 1-2 opens toward the thumb, 5-4 toward the fifth. A silent change "
    "of "
    "finger (2.7) is such a step.",
    "Common practice, no source; that a change is a step is our convention."};

inline constexpr Rule kFirstNoteAloneRule{
    "first-note-alone", "2.3", "First note with no step to follow",
    "Where no step with a side follows in the gesture, or a missing finger hides it, a thumb plays "
    "toward the thumb and a fifth finger toward the fifth; fingers 2, 3 and 4 and double notes are "
    "preparatory with no side.",
    "Our convention."};

/// The side of the first note and what decided it.
struct FirstSide {
  std::optional<Side> side;
  std::size_t step_to = 0;  ///< the strike in the gesture to which the step leads that decided
  bool by_step = false;     ///< such a step decided
  bool by_change = false;   ///< a silent change on that strike did
};

/// Rule 2.3: the side toward which a gesture opens. The first strike's finger must be known.
FirstSide first_side(std::span<const Strike> gesture) noexcept;

}  // namespace fingerturn
