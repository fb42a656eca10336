#include "fingering/figure_fingers.hpp"

#include "hand/keyboard.hpp"
#include "scales/double_notes.hpp"
#include "scales/fingers.hpp"
#include "scales/part_fingers.hpp"
#include "score/line_of_fifths.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdlib>
#include <utility>

namespace fingerturn {
namespace {

constexpr int kKeysInOctave = 12;
constexpr int kThirdAtMost = 4;

std::size_t passings_in(const std::vector<Finger>& fingers) {
  return static_cast<std::size_t>(std::ranges::count_if(
      fingers.begin() + 1, fingers.end(), [](Finger finger) { return finger == kThumb; }));
}

/// The fingers of a scale on a part of it.
std::vector<Finger> fingers_by_tonic(const HandRun& run, ScaleName name, Hand hand) {
  const std::vector<Finger> octave = octave_fingers(name, hand);
  const std::vector<int> notes = notes_of_octave(name.kind, name.tonic, false);
  std::vector<Finger> fingers;
  for (const int key : run.keys) {
    for (std::size_t i = 0; i < notes.size(); ++i) {
      if (semitones_above_c(notes[i]) == key % kKeysInOctave) fingers.push_back(octave[i]);
    }
  }
  return fingers;
}

bool is_whole(std::span<const int> rising, ScaleName name) {
  const int tonic = semitones_above_c(name.tonic);
  return rising.front() % kKeysInOctave == tonic && rising.back() % kKeysInOctave == tonic;
}

/// An arpeggio over two octaves or more from one of its notes to the same, which is not its root.
/// Over one octave chords are fingered as what surrounds them asks.
std::optional<RunFingers> whole_inversion(std::span<const int> rising,
                                          std::span<const ScaleName> names, Hand hand) {
  const ScaleName name = names.front();
  const int width = rising.back() - rising.front();
  if (width % kKeysInOctave != 0 || width == kKeysInOctave) return std::nullopt;
  if (!is_arpeggio(name.kind)) return std::nullopt;
  const std::vector<int> notes = notes_of_octave(name.kind, name.tonic, false);
  const auto lowest = std::ranges::find(notes, rising.front() % kKeysInOctave, semitones_above_c);
  return RunFingers{name,
                    arpeggio_fingers(name, hand, rising),
                    {},
                    true,
                    static_cast<int>(lowest - notes.begin())};
}

/// Groups of fingers from the thumb on, over and over: the thumb takes the first note as it takes a
/// tonic. None where a thumb would be on a black key.
std::optional<HandRun> from_first_note(const HandRun& run, std::span<const std::size_t> groups) {
  HandRun fingered{run.keys, {}};
  for (std::size_t group = 0; fingered.fingers.size() < run.keys.size(); ++group) {
    for (std::size_t i = 0; i < groups[group % groups.size()]; ++i) {
      fingered.fingers.push_back(static_cast<Finger>(kThumb + i));
    }
  }
  fingered.fingers.resize(run.keys.size());
  close_run(fingered, false);
  for (const std::size_t thumb : thumbs_in(fingered.fingers)) {
    if (is_black_key(run.keys[thumb])) return std::nullopt;
  }
  return fingered;
}

/// Three notes of a chord from the thumb on, in an inversion as in root position: the third of them
/// is 3 where the widest step, a fourth, lies above it, else 4 (common practice, no source).
std::optional<HandRun> inversion(const HandRun& run) {
  constexpr std::size_t kNotes = 3;
  constexpr int kFourthStep = 5;
  if (is_black_key(run.keys.front())) return std::nullopt;
  const int above =
      run.keys.size() > kNotes ? std::abs(run.keys[kNotes] - run.keys[kNotes - 1]) : 0;
  HandRun fingered{run.keys, {}};
  for (std::size_t i = 0; i < run.keys.size(); ++i) {
    const std::size_t place = i % kNotes;
    const bool third = above >= kFourthStep;
    fingered.fingers.push_back(static_cast<Finger>(place < 2 ? place + 1 : third ? 3 : 4));
  }
  close_run(fingered, true);
  return fingered;
}

class RunChoice {
 public:
  RunChoice(std::span<const int> rising, Hand hand) : hand_(hand), run_{} {
    run_.keys.assign(rising.begin(), rising.end());
    if (hand == Hand::left) std::ranges::reverse(run_.keys);
  }

  void add(ScaleName name) {
    HandRun part{run_.keys, fingers_by_tonic(run_, name, hand_)};
    if (part.fingers.size() != part.keys.size()) return;
    if (name.kind == ScaleKind::chromatic) {
      constexpr Finger kSecond = 2;
      if (part.fingers.front() == kSecond) part.fingers.front() = kThumb;
    } else {
      close_run(part, is_arpeggio(name.kind));
    }
    consider(part, name);
  }

  void add_without_tonic(bool arpeggio, bool triad) {
    constexpr std::array<std::size_t, 2> kThreeFour{3, 4};
    constexpr std::array<std::size_t, 2> kFourThree{4, 3};
    if (triad) {
      if (const auto run = inversion(run_)) consider(*run, std::nullopt);
    }
    if (arpeggio) return;
    for (const auto& groups : {kThreeFour, kFourThree}) {
      if (const auto run = from_first_note(run_, groups)) consider(*run, std::nullopt);
    }
  }

  RunFingers take() {
    if (hand_ == Hand::left) std::ranges::reverse(best_.fingers);
    return std::move(best_);
  }

 private:
  void consider(const HandRun& run, std::optional<ScaleName> name) {
    const std::size_t passings = passings_in(run.fingers);
    if (!best_.fingers.empty() && passings >= passings_) return;
    passings_ = passings;
    best_ = {name, run.fingers, {}};
  }

  Hand hand_;
  HandRun run_;
  RunFingers best_;
  std::size_t passings_ = 0;
};

/// The scale from tonic to tonic that the lower ones of double notes are; a chromatic one is whole
/// from any note to its octave.
std::optional<ScaleName> whole_scale(std::span<const std::pair<int, int>> rising,
                                     std::span<const ScaleName> names) {
  const std::array<int, 2> ends{rising.front().first, rising.back().first};
  if ((ends[1] - ends[0]) % kKeysInOctave != 0) return std::nullopt;
  for (const ScaleName name : names) {
    if (name.kind == ScaleKind::chromatic || is_whole(ends, name)) return name;
  }
  return std::nullopt;
}

}  // namespace

RunFingers double_note_fingers(std::span<const std::pair<int, int>> rising,
                               std::span<const ScaleName> names, Hand hand) {
  const std::optional<ScaleName> whole = whole_scale(rising, names);
  if (!whole) return {};
  std::vector<DoubleNote> notes;
  for (const auto& [lower, upper] : rising) notes.push_back({lower, upper});
  if (notes.front().upper_key - notes.front().lower_key > kThirdAtMost) {
    finger_sixths(notes, hand);
  } else if (whole->kind == ScaleKind::chromatic) {
    finger_chromatic_thirds(notes, hand);
  } else {
    finger_thirds(notes, hand);
  }
  RunFingers found{whole, {}, {}, true};
  for (const DoubleNote& note : notes) {
    const bool lower_is_near = hand == Hand::right;
    found.fingers.push_back(lower_is_near ? note.lower_finger : note.upper_finger);
    found.far_fingers.push_back(lower_is_near ? note.upper_finger : note.lower_finger);
  }
  return found;
}

RunFingers run_fingers(std::span<const int> rising, std::span<const ScaleName> names, Hand hand) {
  for (const ScaleName name : names) {
    if (!is_whole(rising, name)) continue;
    const int octaves = (rising.back() - rising.front()) / kKeysInOctave;
    return {name, scale_fingers(name, hand, octaves), {}, true};
  }
  if (auto inversion = whole_inversion(rising, names, hand)) return std::move(*inversion);
  RunChoice choice(rising, hand);
  const ScaleKind kind = names.front().kind;
  const bool triad = kind == ScaleKind::major_arpeggio || kind == ScaleKind::minor_arpeggio;
  const auto add_without_tonic = [&] {
    if (kind != ScaleKind::chromatic) choice.add_without_tonic(is_arpeggio(kind), triad);
  };
  // From a note to its octave that note is the tonic to the hand.
  const bool closes_octave = (rising.back() - rising.front()) % kKeysInOctave == 0;
  if (closes_octave) add_without_tonic();
  for (const ScaleName name : names) choice.add(name);
  if (!closes_octave) add_without_tonic();
  return choice.take();
}

}  // namespace fingerturn
