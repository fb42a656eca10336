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
    "most people. That a cycle is two swings is our convention; that swings shrink at speed is "
    "common "
    "practice, no source.";

inline constexpr Rule kSwingRateRule{
    "swing-rate", "6.1", "Swings a second",
    "With a tempo and note values, the swings of an event are divided by the time since the event "
    "before it. Most people can move a limb to and fro 5 to 7 times a second; two swings are one "
    "such cycle, so above 10 swings a second no swing can be full. At a performance tempo that is "
    "the rule and no fault: it is said for information, with the size that the swings can have "
    "(6.3). Grace notes and the notes of a rolled chord take no time of their own, so no rate is "
    "claimed at them nor at the note after them, and none while a key is held (2.9). Bars that "
    "follow one another are named together, at their fastest place.",
    kTempoSources};

inline constexpr Rule kFullSwingTempoRule{
    "full-swing-tempo", "6.2", "The tempo of full swings",
    "The fastest tempo at which no event asks for more than 10 swings a second (6.1), for a hand "
    "and for a passage, with the note that sets it. Above it the swings must shrink, as they do in "
    "any finished performance. Sixteenths that are all double give quarter = 75, all single "
    "quarter = 150.",
    kTempoSources};

inline constexpr Rule kSwingSizeRule{
    "swing-size", "6.3", "The size of the swings",
    "The swing size of an event at a tempo is 10 divided by its swings a second (6.1), at most 1: "
    "the "
    "share of a full swing that there is time for. The report states the smallest with its place.",
    "Our model, and so our convention; that swings shrink at speed is common practice, no source."};

/// How the hand goes on in time from one event to the next.
struct Pace {
  double quarters = 0;             ///< between them; 0 where not known or no time at all
  double quarters_per_minute = 0;  ///< the tempo at the first; 0 where not known

  /// None where the time is not known, or none passes.
  [[nodiscard]] std::optional<double> seconds() const noexcept;
};

/// `quarters_per_minute` is a tempo to take instead of those that are written.
Pace pace_between(const Passage& passage, const Event& before, const Event& now,
                  const std::optional<double>& quarters_per_minute) noexcept;

/// Rules 6.1 and 6.2: gives an event of which the swings are known its swing rate and its tempo of
/// full swings, where they are known. The pace is that from the event struck before it.
void set_swing_rate(const Pace& pace, EventAnalysis& entry) noexcept;

/// Whether what lies between the end of one event and the next is less than a second or, where the
/// tempo is not known, no more than a quarter note; also where no values are written.
bool is_short_rest(const Event& before, const Event& now, const Pace& pace) noexcept;

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
void find_swing_rates(const Line& line, std::span<const FastBars> rows,
                      std::vector<Finding>& findings);

/// The slower of two tempos of full swings, of which either may be missing.
inline std::optional<double> slower(std::optional<double> one,
                                    std::optional<double> other) noexcept {
  if (!one || (other && *other < *one)) return other;
  return one;
}

}  // namespace fingerturn
