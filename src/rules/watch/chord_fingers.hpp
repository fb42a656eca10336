#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"
#include "rules/strike.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace fingerturn {

inline constexpr Rule kOneFingerTwiceRule{
    "one-finger-twice", "5.1", "One finger for two notes",
    "One finger stands on two notes that are struck together. A thumb may take two neighbouring "
    "keys, at most a whole tone apart: that is said for information. Anything else is for caution: "
    "most likely a finger number was mistaken.",
    "Common practice, no source; the levels are our convention."};

inline constexpr Rule kCrossedInChordRule{
    "crossed-in-chord", "5.2", "Fingers crossed within a chord",
    "Of two notes struck together the one further toward the fifth finger's side has the lower "
    "finger number, so that the fingers lie across one another. It is for caution, once for a "
    "chord; "
    "where a twist (5.5) says as much, nothing more is said.",
    "Common practice, no source; the level is our convention."};

inline constexpr Rule kReversedInChordRule{
    "reversed-in-chord", "5.2", "Fingers the other way round",
    "All fingers of a double note or chord stand in the reverse order, and the other way round "
    "each "
    "two of them would lie within their practical spans (5.3). Most likely they were written "
    "upside "
    "down; it is said for information, and neither twist nor crossing is claimed.",
    "Our convention, with the table of spans (5.3)."};

/// Rule 5.2: adds a finding where the fingers stand the other way round; whether they do.
bool find_reversed_in_chord(const Line& line, const Strike& strike, std::size_t index,
                            std::optional<int> reach_semitones, std::vector<Finding>& findings);

/// Rule 5.2: adds a finding where a lone finger is meant for another note; whether it is.
bool find_misplaced_finger(const Line& line, const Strike& strike, std::size_t index,
                           std::optional<int> reach_semitones, std::vector<Finding>& findings);

/// Rule 5.1: adds a finding for each two neighbouring notes of the chord that share a finger.
void find_one_finger_twice(const Line& line, const Strike& strike, std::size_t index,
                           std::vector<Finding>& findings);

/// Rule 5.2: adds a finding where the fingers of neighbouring notes of the chord are crossed.
void find_crossed_in_chord(const Line& line, const Strike& strike, std::size_t index,
                           std::vector<Finding>& findings);

}  // namespace fingerturn
