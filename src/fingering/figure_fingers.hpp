#pragma once

#include "fingerturn/score.hpp"
#include "scales/names.hpp"

#include <optional>
#include <span>
#include <utility>
#include <vector>

namespace fingerturn {

/// The fingers of a run, and the scale that they are those of (Figure::name).
struct RunFingers {
  std::optional<ScaleName> name;
  std::vector<Finger> fingers;      ///< of double notes those nearer to the thumb's side
  std::vector<Finger> far_fingers;  ///< the others of double notes
  bool is_whole = false;
  int inversion = 0;  ///< of a whole arpeggio
};

/// The fingers that a hand has by habit on keys that rise through scales or arpeggios, which all
/// have them: MIDI note numbers, four and more. A run from tonic to tonic has the handbook's,
/// an arpeggio from another note to its octave those of its inversion. Another one is a part: of
/// the ways to finger it that are there the one with the fewest passings, of these the first
/// (docs/fingering.md says their order).
RunFingers run_fingers(std::span<const int> rising, std::span<const ScaleName> names, Hand hand);

/// The same of thirds or of sixths, each with its lower and its upper key. Only whole scales have
/// fingers by habit, those that `scale` writes; else there are none.
RunFingers double_note_fingers(std::span<const std::pair<int, int>> rising,
                               std::span<const ScaleName> names, Hand hand);

}  // namespace fingerturn
