#pragma once

#include "fingerturn/score.hpp"
#include "hand/spans.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace fingerturn {

/// The most keys one hand takes: five fingers, the thumb on two.
inline constexpr std::size_t kMostKeys = 6;

/// One key that the hand has down. All is seen from the hand: numbers grow toward its fifth finger.
struct GripKey {
  std::int32_t across = 0;  ///< semitones
  std::int32_t place = 0;   ///< quarters of a white key
  bool black = false;
  bool struck = false;    ///< false where it only sounds on
  Finger given = 0;       ///< the finger that is written; 0 where none is
  Finger changed_to = 0;  ///< the last of written silent changes; 0 where none is
  Finger habit = 0;       ///< the finger that a figure has (figures.hpp); 0 where none is
  bool in_whole_figure = false;
  Finger printed = 0;          ///< the finger that is given where its group comes again
  Finger again = 0;            ///< the finger that most places of its group have (repeats.hpp)
  bool again_on_key = false;   ///< and those lie on the same key
  std::int8_t held_from = -1;  ///< its place among the keys of the grip before; -1 where struck
};

/// Which way a line goes on.
enum class Onward : std::uint8_t { toward_thumb, stays, toward_fifth, ends };

/// What the hand has down at one moment, nearest to the thumb's side first.
struct Grip {
  std::array<GripKey, kMostKeys> keys;
  std::uint8_t count = 0;
  std::uint8_t struck_count = 0;
  std::size_t event = 0;       ///< its place in Line::events
  std::size_t printed_at = 0;  ///< a grip where fingers are given that keys have as printed
  /// Where the hand goes on: the key nearest to its thumb's side then, against this one's.
  Onward onward = Onward::ends;
  bool opens = false;  ///< a rest, a breath or the beginning stands before it
  bool slow = false;   ///< a quarter note or more after the grip before
  bool quick = false;  ///< an eighth note or less after it
  /// Quarter notes after the grip before, from 1/8 to 2; 1/2 where the time is not known.
  double quarters_since = 0.5;
};

/// The grips of a line: one for each event that is struck or changes fingers. A key is in a grip
/// while it sounds on, unless it lies too far from what is struck or leaves too few fingers for
/// it; then it has been let go. An event that no hand can take is left out.
std::vector<Grip> grips_of(const Line& line, const SpanTable& spans);

/// Whether a note stands on the same key as one before it in its event.
bool doubles_key(const Event& event, std::size_t note) noexcept;

/// Semitones counted toward the fifth finger.
std::int32_t across(Hand hand, int midi) noexcept;

}  // namespace fingerturn
