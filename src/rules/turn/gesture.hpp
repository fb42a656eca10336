#pragma once

#include "fingerturn/rule.hpp"
#include "rules/strike.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace fingerturn {

inline constexpr Rule kEventRule{
    "event", "1.1", "Event",
    "An event is what one hand strikes at one moment: a single note, a double note (two notes) or "
    "a chord (three or more). A tied continuation is held, not struck, and is no event. Grace "
    "notes are events of their own, in their written order, before the note they ornament.",
    "Our convention."};

inline constexpr Rule kGestureRule{
    "gesture", "1.2", "Gesture",
    "A gesture is the row of events that one continuous turning of the forearm covers. It ends at "
    "a rest in that hand, at a breath or caesura mark, at a level event, after a trill or tremolo "
    "(2.4), where bars are skipped, and at the end.",
    "Common practice, no source; that a skipped bar ends it is our convention."};

/// A row of strikes, from `begin` up to but not including `end`.
struct Gesture {
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// Rule 1.2: the gestures of a line, each with one strike or more. A level event is one alone.
std::vector<Gesture> gestures_of(std::span<const Strike> strikes);

}  // namespace fingerturn
