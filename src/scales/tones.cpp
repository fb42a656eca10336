#include "scales/tones.hpp"

#include "scales/double_notes.hpp"
#include "scales/fingers.hpp"
#include "scales/kinds.hpp"
#include "scales/part_fingers.hpp"
#include "score/line_of_fifths.hpp"

#include <algorithm>
#include <cstddef>
#include <iterator>

namespace fingerturn {
namespace {

constexpr int kSemitonesBetweenOctaves = 12;
constexpr int kMinorThird = 3;
constexpr int kMajorSixth = 9;

/// The lowest pitch of this name on a key or above it.
Pitch pitch_from(int key, int fifths) {
  Pitch pitch = pitch_at(fifths, key / kSemitonesBetweenOctaves - 3);
  while (midi_number(pitch) < key) ++pitch.octave;
  return pitch;
}

/// The key for which a pitch is fingered. Fingers are the same in every octave, and what lies below
/// all keys is refused later: ten octaves higher no key has a number below 0.
int fingered_key(Pitch pitch) {
  constexpr int kOctavesHigher = 10;
  return midi_number(pitch) + kOctavesHigher * kSemitonesBetweenOctaves;
}

int fifths_in(Pitch pitch) { return fifths_of(pitch.step, pitch.alter); }

/// So many notes of a scale upward from its lowest, whose place within the octave is given.
std::vector<Pitch> pitches_upward(const HandTask& task, bool falling, std::size_t count) {
  const std::vector<int> notes = notes_of_octave(task.name.kind, task.name.tonic, falling);
  std::vector<Pitch> pitches;
  int key = task.lowest_key;
  for (std::size_t i = 0; i < count; ++i) {
    pitches.push_back(pitch_from(key, notes[(task.first_note + i) % notes.size()]));
    key = midi_number(pitches.back()) + 1;
  }
  return pitches;
}

/// A minor third above a note of a chromatic scale, without F flat, C flat or double flats.
Pitch chromatic_third(Pitch lower) {
  constexpr int kFifthsInMinorThird = -3;
  constexpr int kFlattest = -6;
  int fifths = fifths_in(lower) + kFifthsInMinorThird;
  if (fifths < kFlattest) fifths += kEnharmonicFifths;
  return pitch_from(midi_number(lower) + kMinorThird, fifths);
}

/// A major sixth above a note of a chromatic scale, without E sharp, B sharp or double sharps.
Pitch chromatic_sixth(Pitch lower) {
  constexpr int kFifthsInMajorSixth = 3;
  constexpr int kSharpest = 10;
  int fifths = fifths_in(lower) + kFifthsInMajorSixth;
  if (fifths > kSharpest) fifths -= kEnharmonicFifths;
  return pitch_from(midi_number(lower) + kMajorSixth, fifths);
}

/// The upper notes where each hand plays two at a time.
std::vector<Pitch> upper_pitches(const HandTask& task, bool falling,
                                 const std::vector<Pitch>& lower) {
  constexpr std::size_t kStepsInThird = 2;
  constexpr std::size_t kStepsInSixth = 5;
  const bool sixths = task.notes == ScaleNotes::sixths;
  std::vector<Pitch> upper = lower;
  if (task.notes == ScaleNotes::octaves) {
    for (Pitch& pitch : upper) ++pitch.octave;
  } else if (task.name.kind == ScaleKind::chromatic) {
    for (Pitch& pitch : upper) {
      pitch = sixths ? chromatic_sixth(pitch) : chromatic_third(pitch);
    }
  } else {
    const std::size_t steps = sixths ? kStepsInSixth : kStepsInThird;
    upper = pitches_upward(task, falling, lower.size() + steps);
    upper.erase(upper.begin(), std::next(upper.begin(), static_cast<std::ptrdiff_t>(steps)));
  }
  return upper;
}

std::vector<Finger> single_fingers(const HandTask& task, ScaleName fingered,
                                   const std::vector<Pitch>& pitches) {
  if (task.first_note == 0) return scale_fingers(fingered, task.hand, task.octaves);
  // Each key has its own finger in a chromatic scale, whatever it begins on.
  if (fingered.kind == ScaleKind::chromatic) {
    return scale_fingers({fifths_in(pitches.front()), fingered.kind}, task.hand, task.octaves);
  }
  std::vector<int> keys;
  keys.reserve(pitches.size());
  for (const Pitch pitch : pitches) keys.push_back(fingered_key(pitch));
  return is_arpeggio(fingered.kind) ? arpeggio_fingers(fingered, task.hand, keys)
                                    : part_fingers(fingered, task.hand, keys);
}

Note note_of(Pitch pitch, Finger finger) {
  Note note;
  note.pitch = pitch;
  note.finger = finger;
  return note;
}

std::vector<Tone> double_tones(const HandTask& task, bool falling,
                               const std::vector<Pitch>& lower) {
  const std::vector<Pitch> upper = upper_pitches(task, falling, lower);
  std::vector<DoubleNote> notes;
  for (std::size_t i = 0; i < lower.size(); ++i) {
    notes.push_back({fingered_key(lower[i]), fingered_key(upper[i])});
  }
  if (task.notes == ScaleNotes::octaves) {
    finger_octaves(notes, task.hand);
  } else if (task.notes == ScaleNotes::sixths) {
    finger_sixths(notes, task.hand);
  } else if (task.name.kind == ScaleKind::chromatic) {
    finger_chromatic_thirds(notes, task.hand);
  } else {
    finger_thirds(notes, task.hand);
  }
  std::vector<Tone> tones;
  for (std::size_t i = 0; i < lower.size(); ++i) {
    tones.push_back(
        {note_of(lower[i], notes[i].lower_finger), note_of(upper[i], notes[i].upper_finger)});
  }
  return tones;
}

/// From the lowest to the highest, as they are played rising or falling.
std::vector<Tone> tones_upward(const HandTask& task, bool falling) {
  const ScaleName fingered{task.name.tonic,
                           falling ? falling_kind(task.name.kind) : task.name.kind};
  const std::size_t in_octave = notes_of_octave(task.name.kind, task.name.tonic, falling).size();
  const std::size_t count = in_octave * static_cast<std::size_t>(task.octaves) + 1;
  const std::vector<Pitch> pitches = pitches_upward(task, falling, count);
  if (task.notes != ScaleNotes::single) return double_tones(task, falling, pitches);
  const std::vector<Finger> fingers = single_fingers(task, fingered, pitches);
  std::vector<Tone> tones;
  for (std::size_t i = 0; i < count; ++i) tones.push_back({note_of(pitches[i], fingers[i])});
  return tones;
}

std::vector<Tone> tones_one_way(const HandTask& task, bool falling) {
  std::vector<Tone> tones = tones_upward(task, falling);
  if (falling) std::reverse(tones.begin(), tones.end());
  return tones;
}

}  // namespace

std::vector<Tone> tones_of(const HandTask& task) {
  std::vector<Tone> tones = tones_one_way(task, task.falls_first);
  if (!task.returns) return tones;
  std::vector<Tone> back = tones_one_way(task, !task.falls_first);
  tones.pop_back();
  tones.insert(tones.end(), std::make_move_iterator(back.begin()),
               std::make_move_iterator(back.end()));
  return tones;
}

}  // namespace fingerturn
