#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace fingerturn {

/// The source of both limits.
inline constexpr std::string_view kTempoSources =
    "S. Fujii, K. Kudo, T. Ohtsuki and S. Oda, Neuroscience Letters 459 (2009), citing earlier "
    "work, from memory: voluntary rhythmic movement of a limb ends near 5 to 7 cycles a second for "
    "most people. That a cycle is two swings, and the levels, are our convention; that swings "
    "shrink at speed is common practice, no source.";

inline constexpr Rule kSwingRateRule{
    "swing-rate", "6.1", "Swings a second",
    "With a tempo and note values, the swings of an event are divided by the time since the event "
    "before it. Most people can move a limb to and fro 5 to 7 times a second, which is 10 to 14 "
    "swings: above 10 swings a second it is for caution, above 14 a strain, to make every swing in "
    "full. Grace notes take no time of their own, so no rate is claimed at them nor at the note "
    "after them. Bars that follow one another are named together, at their fastest place.",
    kTempoSources};

inline constexpr Rule kFullSwingTempoRule{
    "full-swing-tempo", "6.2", "The tempo of full swings",
    "The fastest tempo at which no event asks for more than 10 swings a second (6.1), for a hand "
    "and for a passage. Above it the swings must shrink, as they do in any finished performance. "
    "Sixteenths that are all double give quarter = 75, all single quarter = 150.",
    kTempoSources};

/// Rules 6.1 and 6.2: gives each event its swing rate and its tempo of full swings, where known.
/// `quarters_per_minute` is a tempo to take instead of those that are written.
void add_swing_rates(const Passage& passage, const Line& line,
                     std::optional<double> quarters_per_minute, std::span<EventAnalysis> events);

/// Rule 6.1: adds a finding for each row of bars in which swings come too fast to be full.
void find_swing_rates(const Line& line, std::span<const EventAnalysis> events,
                      std::vector<Finding>& findings);

/// The slower of two tempos of full swings, of which either may be missing.
inline std::optional<double> slower(std::optional<double> one,
                                    std::optional<double> other) noexcept {
  if (!one || (other && *other < *one)) return other;
  return one;
}

}  // namespace fingerturn
