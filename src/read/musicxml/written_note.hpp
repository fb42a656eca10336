#pragma once

#include "fingerturn/score.hpp"
#include "score/diagnostic_codes.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// A part of a score as it is written, before it is known which hand plays what.
namespace fingerturn {

/// Times within a measure are counted in ticks, of which a quarter note has
/// WrittenPart::ticks_per_quarter, so that every written time is a whole number of them.
using Ticks = std::int64_t;

struct WrittenNote {
  Note note;
  Ticks tick = 0;             ///< from the beginning of its measure
  Ticks duration = 0;         ///< 0 for a grace note
  std::uint32_t measure = 0;  ///< its place in WrittenPart::measures
  std::uint32_t voice = 0;    ///< the number of its voice in the part
  std::uint32_t staff = 1;    ///< from 1, the highest
  /// How many finger numbers stand on it without saying what they are to one another.
  std::uint32_t stacked_fingers = 0;
  bool in_chord = false;  ///< struck with the note before it
  bool grace = false;
  bool breath_after = false;
};

struct WrittenMeasure {
  std::int32_t bar = 1;        ///< the number of the bar
  std::int32_t beat_type = 4;  ///< of the meter that holds
  Ticks bar_tick = 0;          ///< from the beginning of its bar
  Ticks length = 0;            ///< as long as its longest voice
  BarLineStyle left = BarLineStyle::single;
  BarLineStyle right = BarLineStyle::single;
  bool continues_bar = false;  ///< the second part of a bar that is written in two
  Span span;
};

/// A meter or tempo that is written in a measure. Few measures have one, and many may be empty.
template <typename Value>
struct FromMeasure {
  std::uint32_t measure = 0;  ///< its place in WrittenPart::measures
  Value value;
};

/// A voice of a part. Where it plays two things at a time it is really two voices of one name, one
/// on each staff.
struct WrittenVoice {
  std::uint32_t measure = 0;  ///< where it played last
  Ticks end = 0;              ///< in that measure, up to where it has played
  bool doubled = false;
};

/// Something wrong with a note, which is reported once its hand is known.
struct NoteProblem {
  std::size_t note = 0;  ///< its place in WrittenPart::notes
  KnownCode code;
  Span span;
  std::string message;
};

/// Fingers that were suggested for a note in an earlier run. They are taken where the fingers that
/// are given, once they are settled, leave the note none.
struct SuggestedFingers {
  std::size_t note = 0;  ///< its place in WrittenPart::notes
  std::vector<Finger> fingers;
};

struct WrittenPart {
  Ticks ticks_per_quarter = 1;
  std::vector<WrittenMeasure> measures;
  std::vector<FromMeasure<Meter>> meters;  ///< at most one in a measure, in their order
  std::vector<FromMeasure<Tempo>> tempos;  ///< the same
  std::vector<WrittenNote> notes;          ///< in the order in which they are written
  std::vector<NoteProblem> problems;
  std::vector<SuggestedFingers> suggestions;  ///< in the order of their notes
  std::vector<WrittenVoice> voices;           ///< by their numbers
  std::uint32_t staff_count = 1;
};

}  // namespace fingerturn
