#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"

#include <cstddef>
#include <cstdint>
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

/// Rules 6.1 and 6.2: gives an event of which the swings are known its swing rate and its tempo of
/// full swings, where they are known. `before` is the event struck before it, `now` the event
/// itself; `quarters_per_minute` is a tempo to take instead of those that are written.
void set_swing_rate(const Passage& passage, const Event& before, const Event& now,
                    const std::optional<double>& quarters_per_minute, EventAnalysis& entry);

/// Neighbouring bars in which swings come too fast to be full, at one tempo.
struct FastBars {
  std::int32_t first = 0;
  std::int32_t last = 0;
  double quarters_per_minute = 0;
  double swing_rate = 0;        ///< at the fastest place, in swings a second
  double full_swing_tempo = 0;  ///< of the fastest place, in quarters a minute
  std::size_t event = 0;        ///< the fastest place in Line::events
  std::size_t index = 0;        ///< and its number among the struck events of the line
};

/// Rule 6.1: takes an event into the rows of bars in which swings come too fast to be full. Events
/// are taken in their order.
void add_to_fast_bars(const Line& line, const EventAnalysis& entry, std::vector<FastBars>& rows);

/// Rule 6.1: adds a finding for each row.
void find_swing_rates(std::span<const FastBars> rows, std::vector<Finding>& findings);

/// The slower of two tempos of full swings, of which either may be missing.
inline std::optional<double> slower(std::optional<double> one,
                                    std::optional<double> other) noexcept {
  if (!one || (other && *other < *one)) return other;
  return one;
}

}  // namespace fingerturn
