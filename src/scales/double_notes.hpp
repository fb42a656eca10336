#pragma once

#include "fingerturn/score.hpp"

#include <span>
#include <vector>

/// The fingers of scales in double notes.
namespace fingerturn {

/// Two keys that one hand strikes together (MIDI note numbers), and their fingers.
struct DoubleNote {
  int lower_key = 0;
  int upper_key = 0;
  Finger lower_finger = 0;
  Finger upper_finger = 0;
};

/// 1-5 on white keys, 1-4 on black ones (common practice, no source).
void finger_octaves(std::span<DoubleNote> rising, Hand hand);

/// The thirds of a scale of seven notes over whole octaves. Source: our convention, as
/// docs/fingering.md states it.
void finger_thirds(std::span<DoubleNote> rising, Hand hand);

/// The minor thirds of a chromatic scale. Source: our convention, as docs/fingering.md states it.
void finger_chromatic_thirds(std::span<DoubleNote> rising, Hand hand);

/// Sixths of any scale: 1-4 and 2-5 in turn. Source: our convention, as docs/fingering.md states
/// it.
void finger_sixths(std::span<DoubleNote> rising, Hand hand);

}  // namespace fingerturn
