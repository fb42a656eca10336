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

/// Where a note stands in its beam.
enum class Beam : std::uint8_t { none, begins, inside, ends };

struct WrittenNote {
  Note note;
  Ticks tick = 0;             ///< from the beginning of its measure
  Ticks duration = 0;         ///< 0 for a grace note
  std::uint32_t measure = 0;  ///< its place in WrittenPart::measures
  std::uint32_t voice = 0;    ///< the number of its voice in the part
  std::uint32_t staff = 1;    ///< from 1, the highest
  Hand hand = Hand::right;    ///< the hand that plays it, once that is known
  /// How many finger numbers stand on it without saying what they are to one another.
  std::uint32_t stacked_fingers = 0;
  bool in_chord = false;  ///< struck with the note before it
  bool grace = false;
  bool breath_after = false;
  bool continues = false;   ///< a tied continuation, once its hand is known
  bool rolled = false;      ///< of a rolled chord
  bool rolls_down = false;  ///< of one that is rolled from its highest note down
  Ornament ornament = Ornament::none;
  Beam beam = Beam::none;
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

/// A sign that says which hand plays from a note on: "m.d.", "l.h." and the like.
struct HandSign {
  std::size_t note = 0;     ///< the first note that is written after it, in WrittenPart::notes
  std::uint32_t staff = 0;  ///< 0 where none is written
  Hand hand = Hand::right;
};

/// An ornament of which only the note that it stands on is read.
struct OrnamentLeftOut {
  std::int32_t bar = 0;
  std::string_view name;
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
  Finger in_place_of = 0;  ///< the written finger that it stands for; 0 for none
};

struct WrittenPart {
  Ticks ticks_per_quarter = 1;
  std::vector<WrittenMeasure> measures;
  std::vector<FromMeasure<Meter>> meters;       ///< at most one in a measure, in their order
  std::vector<FromMeasure<Tempo>> tempos;       ///< the same
  std::vector<FromMeasure<KeySignature>> keys;  ///< the same
  std::vector<FromMeasure<std::string>> words;  ///< above the measures: Passage::notes
  std::vector<WrittenNote> notes;               ///< in the order in which they are written
  std::vector<NoteProblem> problems;
  std::vector<SuggestedFingers> suggestions;  ///< in the order of their notes
  std::vector<HandSign> hand_signs;           ///< in the order in which they are written
  std::vector<OrnamentLeftOut> ornaments_left_out;
  ScoreSigns signs;
  std::uint32_t voice_count = 0;
  std::uint32_t staff_count = 1;
};

}  // namespace fingerturn
