#pragma once

#include "fingerturn/score.hpp"
#include "scales/names.hpp"

#include <string_view>
#include <vector>

/// The fingers of handbooks, from memory.
namespace fingerturn {

/// The fingers of a rising scale from its lowest note to its highest.
std::vector<Finger> scale_fingers(ScaleName name, Hand hand, int octaves);

/// The fingers of each note of an octave from the tonic up, which are the same in every octave but
/// for what stands at the ends.
std::vector<Finger> octave_fingers(ScaleName name, Hand hand);

/// What other handbooks have in place of it, as the end of a sentence; empty where nothing is
/// known.
std::string_view other_fingers(ScaleName name, Hand hand);

/// The book that the fingers of a kind are remembered from.
std::string_view source_of_fingers(ScaleKind kind);

}  // namespace fingerturn
