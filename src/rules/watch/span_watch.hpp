#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"
#include "hand/spans.hpp"
#include "rules/strike.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace fingerturn {

inline constexpr std::string_view kLevelledSpanSources =
    "R. Parncutt, J. A. Sloboda, E. F. Clarke, M. Raekallio and P. Desain, An ergonomic model of "
    "keyboard fingering for melodic fragments, Music Perception 14(4) (1997), table of spans, from "
    "memory. The levels, our convention, are set by what handbooks themselves ask for: no "
    "fingering "
    "of a handbook scale or arpeggio draws more than information.";

inline constexpr Rule kStretchRule{
    "stretch", "5.4", "Stretch",
    "Two notes of one event lie wider apart than their fingers' widest comfortable span (for "
    "information), than their widest practical span (for caution), or more than two semitones "
    "wider "
    "than that (a strain). Between neighbouring single notes of a gesture, wider than comfortable "
    "but within the practical span is for information; beyond that the hand cannot span them at "
    "all, and it is a leap (5.6).",
    kLevelledSpanSources};

inline constexpr Rule kTwistRule{
    "twist", "5.5", "Twist",
    "Two notes of one event lie closer together than their fingers' least comfortable span (for "
    "information), than their least practical span (for caution), or five semitones or more closer "
    "than that (a strain); where fingers lie across one another the span is below 0. Between "
    "neighbouring single notes of a gesture it is a passing (3) narrower than the least practical "
    "span, for information: everyday passings over a tone or a third say nothing. A passing with "
    "the thumb on a black key, while the finger that it passes or that passes it is on a white "
    "one, "
    "is for caution.",
    kLevelledSpanSources};

/// Rules 5.4 and 5.5: adds a finding of each rule for a chord or double note in which the span of
/// any two notes is not comfortable. It describes the first of the loudest pairs, and names the
/// others.
void find_spans_in_chord(const Line& line, const Strike& strike, std::size_t index,
                         std::optional<int> reach_semitones, std::vector<Finding>& findings);

/// Rules 5.4 and 5.5: adds a finding where the span between two neighbouring single notes of a
/// gesture, which are no leap, deserves a look. `entry` is the event of the second.
void find_span_between(const Line& line, const Strike& from, const Strike& to,
                       const EventAnalysis& entry, std::optional<int> reach_semitones,
                       std::vector<Finding>& findings);

}  // namespace fingerturn
