#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"
#include "hand/spans.hpp"
#include "rules/strike.hpp"
#include "rules/tempo.hpp"

#include <optional>
#include <vector>

namespace fingerturn {

inline constexpr Rule kLeapRule{
    "leap", "5.6", "Leap",
    "The arm carries the hand from one event to the next, be they notes, double notes or chords, "
    "by five white keys or more, one finger goes as far from key to key, or neighbouring single "
    "notes of a gesture lie beyond what their fingers can practically span or pass (3). A passing "
    "is no leap. Neither stretch nor twist is claimed then. It counts also after a level event, "
    "and "
    "after a rest of less than a second, of no more than a quarter note where the tempo is not "
    "known, or of no written value. It is said for information.",
    "Our convention, with the table of spans (5.3)."};

inline constexpr Rule kQuickLeapRule{
    "quick-leap", "5.7", "Quick leap",
    "A leap (5.6) whose time is known, from stroke to stroke: from 40 white keys a second on it is "
    "said for information, from 70 on for caution. It stands in the place of the leap.",
    "Our convention."};

/// What lies between an event and the one that is struck before it.
struct Approach {
  const Strike* from = nullptr;
  bool in_gesture = false;  ///< both stand in one gesture
  bool near = false;        ///< no rest, or a short one, lies between
  Pace pace;                ///< from stroke to stroke
};

/// Rules 5.6 and 5.7: adds a finding where the arm leaps to an event; whether it does.
bool find_leap(const Line& line, const Approach& approach, const Strike& to,
               const EventAnalysis& entry, std::optional<int> reach_semitones,
               std::vector<Finding>& findings);

}  // namespace fingerturn
