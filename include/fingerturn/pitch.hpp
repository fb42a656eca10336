#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace fingerturn {

/// The seven letters, in the order in which they lie within an octave.
enum class Step : std::uint8_t { c, d, e, f, g, a, b };

enum class KeyColour : std::uint8_t { white, black };

/// A pitch as it is spelled, in scientific pitch notation: C4 is middle C. C#4 and Db4 are the
/// same key but different pitches. `alter` is in semitones, -2 (double flat) to 2 (double sharp).
///
///     parse_pitch("Bb3");                       // Pitch{Step::b, -1, 3}
///     midi_number({Step::c, 0, 4});             // 60
///     to_string({Step::f, 2, 5});               // "F##5"
struct Pitch {
  Step step = Step::c;
  std::int8_t alter = 0;
  std::int8_t octave = 4;

  friend bool operator==(const Pitch&, const Pitch&) = default;
};

/// The ends of a piano of 88 keys, as MIDI note numbers (MIDI 1.0: middle C is 60).
inline constexpr int kLowestKey = 21;    // A0
inline constexpr int kHighestKey = 108;  // C8

/// The MIDI note number of the key a pitch is played on (MIDI 1.0: C4 is 60).
int midi_number(Pitch pitch) noexcept;
/// Whether the key is one of the 88 of a piano.
bool on_the_piano(Pitch pitch) noexcept;
/// The colour of the key with this MIDI note number, 0 or above.
KeyColour key_colour(int midi) noexcept;
/// Letter steps above C0, accidentals left out: C4 is 28, D4 is 29.
int letter_position(Pitch pitch) noexcept;

/// A pitch written in full, such as "C4", "bb3", "F##5", "Fx5" or with the signs for the
/// accidentals; nothing where the text is anything else. The range of the piano is not checked.
std::optional<Pitch> parse_pitch(std::string_view text) noexcept;
/// Letter, ASCII accidental (#, ##, b, bb) and octave: what parse_pitch reads.
std::string to_string(Pitch pitch);

}  // namespace fingerturn
