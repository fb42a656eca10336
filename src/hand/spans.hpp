#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace fingerturn {

/// The source of every row of the table of spans.
inline constexpr std::string_view kSpanSources =
    "R. Parncutt, J. A. Sloboda, E. F. Clarke, M. Raekallio and P. Desain, An ergonomic model of "
    "keyboard fingering for melodic fragments, Music Perception 14(4) (1997), table of spans, from "
    "memory.";

inline constexpr Rule kReachRule{
    "reach", "5.3", "The reach of a hand",
    "Stretches and twists are measured with a table of spans that gives for each pair of fingers "
    "the least and the widest interval that is practical, and within it the one that is "
    "comfortable. Hands differ: where the widest interval that a hand takes comfortably with 1-5 "
    "is given (13 semitones in the table), the widest intervals of all pairs with the thumb grow "
    "or shrink in the same ratio, rounded down, and the findings say so.",
    "For the table: R. Parncutt, J. A. Sloboda, E. F. Clarke, M. Raekallio and P. Desain, An "
    "ergonomic model of keyboard fingering for melodic fragments, Music Perception 14(4) (1997), "
    "from memory. That a hand's reach changes the pairs with the thumb in one ratio is our "
    "convention."};

/// The widest interval that the hand of the table takes comfortably with 1-5, in semitones.
inline constexpr int kPublishedReach = 13;

/// Keys no further apart than this, in semitones, one thumb covers.
inline constexpr int kNeighbours = 2;

/// Whether one finger takes two keys so many semitones apart: the thumb does, where they are
/// neighbours.
constexpr bool takes_both(Finger finger, int semitones) noexcept {
  return finger == kThumb && semitones <= kNeighbours;
}

/// What nobody takes with one hand, in semitones.
inline constexpr int kNobodysSpan = 20;

/// The spans of a pair of fingers in semitones: above 0 where the higher finger number is on the
/// key further toward the fifth finger's side. A row of the table.
struct FingerSpans {
  Finger lower = 0;
  Finger higher = 0;
  int least_practical = 0;
  int least_comfortable = 0;
  int least_relaxed = 0;
  int widest_relaxed = 0;
  int widest_comfortable = 0;
  int widest_practical = 0;
};

/// The table as it was published, for the right hand; the left is its mirror image.
inline constexpr std::array<FingerSpans, 10> kPublishedSpans{{
    {1, 2, -5, -3, 1, 5, 8, 10},
    {1, 3, -4, -2, 3, 7, 10, 12},
    {1, 4, -3, -1, 5, 9, 12, 14},
    {1, 5, -1, 1, 7, 10, 13, 15},
    {2, 3, 1, 1, 1, 2, 3, 5},
    {2, 4, 1, 1, 3, 4, 5, 7},
    {2, 5, 2, 2, 5, 6, 8, 10},
    {3, 4, 1, 1, 1, 2, 2, 4},
    {3, 5, 1, 1, 3, 4, 5, 7},
    {4, 5, 1, 1, 1, 2, 3, 5},
}};

/// The spans of two different fingers, in either order, of a hand whose reach may be given.
FingerSpans spans_of(Finger one, Finger other, std::optional<int> reach_semitones) noexcept;

/// How many semitones the key of the higher of two fingers lies further toward the fifth finger's
/// side than the other's.
int span_between(Hand hand, Finger from, int from_key, Finger to, int to_key) noexcept;

/// The spans of every pair of fingers of one hand, ready to look up.
class SpanTable {
 public:
  explicit SpanTable(std::optional<int> reach_semitones);

  [[nodiscard]] const FingerSpans& of(Finger one, Finger other) const noexcept {
    return spans_[one][other];
  }
  /// Whether two fingers of one event can be so wide apart; `width` is counted from the key
  /// nearer to the thumb's side, on which `near` is. One finger takes two keys only where it is
  /// the thumb and they are neighbours.
  [[nodiscard]] bool is_practical(Finger near, Finger far, std::int32_t width) const noexcept;

 private:
  std::array<std::array<FingerSpans, kFifth + 1>, kFifth + 1> spans_{};
};

}  // namespace fingerturn
