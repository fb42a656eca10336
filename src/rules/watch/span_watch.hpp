#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"
#include "hand/spans.hpp"
#include "rules/strike.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace fingerturn {

inline constexpr Rule kStretchRule{
    "stretch", "5.4", "Stretch",
    "Two notes of one event lie wider apart than their fingers' widest comfortable span (for "
    "caution) or than their widest practical span (a strain). Between neighbouring single notes of "
    "a gesture, wider than comfortable but within the practical span is for caution; beyond that "
    "the hand cannot span them at all, and it is a leap (5.6).",
    kSpanSources};

inline constexpr Rule kTwistRule{
    "twist", "5.5", "Twist",
    "Two notes of one event lie closer together than their fingers' least comfortable span (for "
    "caution) or than their least practical span (a strain); where fingers are passed the span is "
    "below 0. Between neighbouring single notes of a gesture, closer than comfortable but within "
    "the practical span is for information, since a thumb passing a whole tone under 4 is everyday "
    "practice; closer than practical, with the keys at most four semitones apart, is for caution, "
    "since the fingers really cross. The same key again is no twist.",
    kSpanSources};

inline constexpr Rule kLeapRule{
    "leap", "5.6", "Leap",
    "Neighbouring single notes of a gesture lie beyond what their fingers can practically span, or "
    "the thumb would have to pass further than four semitones. The hand cannot span them, so the "
    "arm carries it, and neither stretch nor twist is claimed; it is said for information. A carry "
    "of five white keys or more is called a leap. A thumb passing a fourth in an arpeggio is "
    "carried too.",
    "Our convention, with the table of spans (5.3)."};

/// Rules 5.4 and 5.5: adds a finding of each rule for a chord or double note in which the span of
/// any two notes is not comfortable. It describes the first of the loudest pairs, and names the
/// others.
void find_spans_in_chord(const Line& line, const Strike& strike, std::size_t index,
                         std::optional<int> reach_semitones, std::vector<Finding>& findings);

/// Rules 5.4 to 5.6: adds a finding where the span between two neighbouring strikes of a gesture
/// is not comfortable. `entry` is the event of the second.
void find_span_between(const Line& line, const Strike& from, const Strike& to,
                       const EventAnalysis& entry, std::optional<int> reach_semitones,
                       std::vector<Finding>& findings);

}  // namespace fingerturn
