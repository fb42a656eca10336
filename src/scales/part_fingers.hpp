#pragma once

#include "fingerturn/score.hpp"
#include "scales/names.hpp"

#include <cstddef>
#include <span>
#include <vector>

/// The fingers of scales that begin on another note than their tonic, and of arpeggios in
/// inversions; what they follow is said in docs/fingering.md.
namespace fingerturn {

/// Keys and their fingers as the hand has them: from the thumb's side to the fifth's. The keys are
/// MIDI note numbers, those of the left hand falling.
struct HandRun {
  std::vector<int> keys;
  std::vector<Finger> fingers;
};

/// Where the thumb is, in their order.
std::vector<std::size_t> thumbs_in(const std::vector<Finger>& fingers);

/// The thumb does not pass for the last few notes where the fingers before it are enough: a scale
/// goes on to 4 or 5, an arpeggio closes with 5. None of them then stands with 5 on a black key.
void close_run(HandRun& run, bool arpeggio);

/// The fingers of an arpeggio over whole octaves from one of its notes, in the order of the keys.
/// The thumb takes the outermost note at its side, or else the next white key toward the fifth; on
/// the note where it is in root position the other fingers are those of root position.
std::vector<Finger> arpeggio_fingers(ScaleName name, Hand hand, std::span<const int> rising);

/// The fingers of a scale over whole octaves from one of its notes: each note has the one that it
/// has in the scale, and the end at the fifth finger's side closes as a part of a scale does.
std::vector<Finger> part_fingers(ScaleName name, Hand hand, std::span<const int> rising);

}  // namespace fingerturn
