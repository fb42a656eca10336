#include "read/notation/octave_question.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// Two fingers of a hand, one after the other or in one chord.
struct FingerPair {
  Finger first = 0;
  Finger second = 0;
  bool in_chord = false;

  [[nodiscard]] Finger lower() const { return std::min(first, second); }
  [[nodiscard]] Finger higher() const { return std::max(first, second); }
};

/// Whether fingers pass one another often enough for it to be meant: those between pass the thumb,
/// but not in a chord, and neighbouring keys are passed by any.
bool may_pass(FingerPair pair, int semitones) {
  constexpr int kNextKeys = 2;
  const bool about_the_thumb = pair.lower() == kThumb && pair.higher() != kFifth;
  return std::abs(semitones) <= kNextKeys || (about_the_thumb && !pair.in_chord);
}

/// The widest interval that a pair of fingers is believed of, in semitones.
int widest(FingerPair pair) {
  constexpr int kWithThumb = 15;
  // Of fingers that are neighbours, that have one between them, or two.
  constexpr std::array<int, 4> kOthers{0, 5, 7, 10};
  if (pair.lower() == kThumb) return kWithThumb;
  return kOthers.at(static_cast<std::size_t>(pair.higher() - pair.lower()));
}

}  // namespace

void ask_for_octave(const Note& note, Pitch from, TextPiece word, NotesBefore& before,
                    Reporter& reporter) {
  if (!note.finger || !before.finger || before.octave_asked == before.bar) return;
  const FingerPair pair{*before.finger, *note.finger, before.same_word};
  const int semitones = midi_number(note.pitch) - midi_number(from);
  const bool up = (pair.second > pair.first) == (before.hand == Hand::right);
  if (pair.first == pair.second || (semitones > 0) == up || may_pass(pair, semitones)) return;
  Pitch other = note.pitch;
  other.octave = static_cast<std::int8_t>(other.octave + (up ? 1 : -1));
  const bool fits = std::abs(midi_number(other) - midi_number(from)) <= widest(pair);
  // A hand that goes to and fro has been there.
  if (!on_the_piano(other) || !fits || before.earlier == note.pitch) return;
  before.octave_asked = before.bar;
  reporter.report(
      "octave-side", word.span(),
      fmt::format("expected a note {} {}, as the fingers {} and {} of the {} hand lie, found the "
                  "nearest, {}",
                  up ? "above" : "below", to_string(from), pair.first, pair.second,
                  to_string(before.hand), to_string(note.pitch)),
      fmt::format("write the octave: {} or {}", to_string(other), to_string(note.pitch)));
}

}  // namespace fingerturn
