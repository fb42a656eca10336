#pragma once

#include "fingerturn/analysed.hpp"
#include "write/notated/value.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

/// A passage as it stands on staves, a staff for each hand: what is written in which voice, with
/// which values, signs and beams. Pages draw it, and scores are written from it.
namespace fingerturn {

/// Where a note stands in its line.
struct HeadPlace {
  std::size_t event = 0;  ///< in Line::events
  std::size_t note = 0;   ///< in Event::notes
};

/// A note head.
struct NotatedHead {
  HeadPlace place;
  Pitch pitch;
  std::optional<std::int8_t> sign;  ///< the accidental before it, where it needs one
  bool tied_to = false;             ///< from the head before it on its key
  bool tied_on = false;             ///< to the next
};

/// Where a chord stands in its beam.
enum class BeamPart : std::uint8_t { none, begins, inside, ends };

/// What a voice does at one moment: heads, lowest first, or a rest.
struct NotatedChord {
  std::size_t event = 0;  ///< in Line::events; of a rest, the event that has it
  std::vector<NotatedHead> heads{};
  Ticks onset = 0;  ///< from the beginning of the bar
  Ticks length = 0;
  std::optional<NoteValue> value{};  ///< none where its length is not known or cannot be written
  bool grace = false;
  bool rolled = false;
  bool breath_after = false;
  Ornament ornament = Ornament::none;
  BeamPart beam = BeamPart::none;
  BeamPart tuplet = BeamPart::none;  ///< where it stands in a tuplet

  [[nodiscard]] bool is_rest() const noexcept { return heads.empty(); }
};

/// The chords of a voice in a bar, rising; the rests of a hand are those of its first voice.
using NotatedVoice = std::vector<NotatedChord>;

/// What a hand has in a bar.
struct NotatedHand {
  std::array<NotatedVoice, 2> voices;  ///< the upper and, where the hand has two, the lower
  BarLineStyle left = BarLineStyle::single;
  BarLineStyle right = BarLineStyle::single;

  [[nodiscard]] bool has_two_voices() const noexcept { return !voices[1].empty(); }
};

struct NotatedBar {
  std::int32_t bar = 0;
  Ticks start = 0;                    ///< from the beginning of the passage
  Ticks length = 0;                   ///< as long as the hand that has more
  std::optional<Meter> meter{};       ///< where it begins to hold
  std::optional<KeySignature> key{};  ///< where it begins to hold
  std::vector<NotatedHand> hands{};   ///< one for each line
};

}  // namespace fingerturn
