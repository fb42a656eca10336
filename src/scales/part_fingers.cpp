#include "scales/part_fingers.hpp"

#include "scales/fingers.hpp"
#include "scales/kinds.hpp"
#include "score/line_of_fifths.hpp"

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace fingerturn {
namespace {

constexpr int kKeysInOctave = 12;

bool is_black(int key) { return key_colour(key) == KeyColour::black; }

HandRun run_of(Hand hand, std::span<const int> rising) {
  HandRun run{{rising.begin(), rising.end()}, {}};
  if (hand == Hand::left) std::ranges::reverse(run.keys);
  return run;
}

std::vector<Finger> rising_fingers(Hand hand, HandRun run) {
  if (hand == Hand::left) std::ranges::reverse(run.fingers);
  return std::move(run.fingers);
}

/// The finger that a key has in the scale from its tonic.
Finger finger_from_tonic(ScaleName name, Hand hand, int key) {
  const std::vector<int> notes = notes_of_octave(name.kind, name.tonic, false);
  const auto found = std::ranges::find_if(
      notes, [key](int note) { return semitones_above_c(note) == key % kKeysInOctave; });
  return octave_fingers(name, hand)[static_cast<std::size_t>(found - notes.begin())];
}

/// Where the thumb comes first.
std::size_t first_thumb(const HandRun& run) {
  const auto white = std::ranges::find_if_not(run.keys, is_black);
  return white == run.keys.end() ? 0 : static_cast<std::size_t>(white - run.keys.begin());
}

/// The finger of a note so many places past the thumb. The third of a triad has 3 where a fourth
/// lies between it and the next thumb, else 4.
Finger finger_past_thumb(const HandRun& run, std::size_t thumb, std::size_t notes,
                         std::size_t past) {
  constexpr std::size_t kNotesInTriad = 3;
  constexpr int kSemitonesInFourth = 5;
  if (notes > kNotesInTriad || past + 1 < kNotesInTriad) return static_cast<Finger>(past + kThumb);
  const int top = run.keys[thumb + past] - run.keys[thumb];
  return static_cast<Finger>(kKeysInOctave - std::abs(top) < kSemitonesInFourth ? 4 : 3);
}

}  // namespace

std::vector<std::size_t> thumbs_in(const std::vector<Finger>& fingers) {
  std::vector<std::size_t> thumbs;
  for (std::size_t i = 0; i < fingers.size(); ++i) {
    if (fingers[i] == kThumb) thumbs.push_back(i);
  }
  return thumbs;
}

void close_run(HandRun& run, bool arpeggio) {
  const std::vector<std::size_t> thumbs = thumbs_in(run.fingers);
  if (thumbs.empty() || thumbs.back() == 0) return;
  const std::size_t last = thumbs.back();
  const std::size_t before = thumbs.size() > 1 ? thumbs[thumbs.size() - 2] : 0;
  const std::size_t count = run.fingers.size() - last;
  if (arpeggio) {
    if (count == 1 && last - before >= 3 && !is_black(run.keys.back())) {
      run.fingers.back() = kFifth;
    }
    return;
  }
  const std::size_t highest = run.fingers[last - 1] + count;
  if (highest > kFifth || (highest == kFifth && is_black(run.keys.back()))) return;
  for (std::size_t i = 0; i < count; ++i) {
    run.fingers[last + i] = static_cast<Finger>(run.fingers[last + i - 1] + 1);
  }
}

std::vector<Finger> arpeggio_fingers(ScaleName name, Hand hand, std::span<const int> rising) {
  HandRun run = run_of(hand, rising);
  const std::size_t notes = notes_of_octave(name.kind, name.tonic, false).size();
  const std::size_t thumb = first_thumb(run);
  const bool as_in_root = finger_from_tonic(name, hand, run.keys[thumb]) == kThumb;
  for (std::size_t i = 0; i < run.keys.size(); ++i) {
    const std::size_t past = (i + notes - thumb) % notes;
    run.fingers.push_back(as_in_root ? finger_from_tonic(name, hand, run.keys[i])
                                     : finger_past_thumb(run, thumb, notes, past));
  }
  if (run.fingers.back() == kThumb) run.fingers.back() = kFifth;
  return rising_fingers(hand, std::move(run));
}

std::vector<Finger> part_fingers(ScaleName name, Hand hand, std::span<const int> rising) {
  HandRun run = run_of(hand, rising);
  for (const int key : run.keys) run.fingers.push_back(finger_from_tonic(name, hand, key));
  close_run(run, false);
  return rising_fingers(hand, std::move(run));
}

}  // namespace fingerturn
