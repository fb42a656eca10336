#pragma once

#include "fingerturn/score.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

/// The places of a passage that ask most of the hands (docs/rules.md, 6.4). What is counted, and
/// what it counts, is our convention; the things counted are what the other rules found.
namespace fingerturn {

struct Finding;

/// A carry of so many white keys is far, whatever the time for it.
inline constexpr double kFarCarry = 4;

/// Whether a finding of the watch list is a leap, quick or not.
bool is_leap(const Finding& finding) noexcept;

/// What a bar asks of the hands that play in it.
struct BarDemand {
  std::int32_t bar = 0;
  std::size_t doubles = 0;         ///< that stand next to another double of the same hand
  std::size_t passings = 0;        ///< of the thumb or of other fingers
  std::size_t quick_passings = 0;  ///< of these, an eighth of a second or less after a note
  std::size_t carries = 0;         ///< that are far, or fast, and are no leaps
  std::size_t leaps = 0;
  std::size_t leap_points = 0;  ///< what these come to
  /// Of the watch list, other than leaps, swing rates and missing fingers; each kind of information
  /// once in a hand.
  std::size_t findings = 0;
  std::size_t finding_points = 0;
  std::size_t held = 0;          ///< doubles while another key is held
  std::size_t small_swings = 0;  ///< events whose swings have time for less than 4/5 of their size
  std::size_t kinds_differ = 0;  ///< where one hand is single and the other double
  std::size_t points = 0;        ///< what all of it comes to

  friend bool operator==(const BarDemand&, const BarDemand&) = default;
};

/// Bars to work at together.
struct PracticePlace {
  BarRange bars;                  ///< those that ask, with the bar before and the bar after
  std::vector<BarDemand> asking;  ///< the bars among them that ask, rising
};

/// How many double rotations stand in a bar, of both hands together.
struct BarDoubles {
  std::int32_t bar = 0;
  std::size_t doubles = 0;

  friend bool operator==(const BarDoubles&, const BarDoubles&) = default;
};

}  // namespace fingerturn
