#pragma once

#include "fingerturn/score.hpp"

#include <string>

/// MusicXML made from a score, so that a reader's work can be compared with what went in. It says
/// all that both can say: spelled pitches, values, bars, ties, grace notes, chords, breaths and
/// fingers, each hand on a staff of its own. All note values must be known.
namespace fingerturn::tests {

std::string musicxml_of(const Passage& passage);

}  // namespace fingerturn::tests
