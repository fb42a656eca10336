#pragma once

#include "fingerturn/analysed.hpp"
#include "write/page/ink/ink.hpp"

#include <cstddef>
#include <map>

namespace fingerturn {

/// The fingers of a hand on the keys where it lies, by their MIDI note numbers.
using FingersOnKeys = std::map<int, Finger>;

/// Where the hand lies from a struck event of a line on: the keys and fingers up to the first that
/// a finger takes from another key or another finger takes over.
FingersOnKeys fingers_on_keys(const AnalysedLine& line, std::size_t number);

/// Whether the hand takes a new place at a struck event: the first of the line whose fingers are
/// known, or one that the arm carries it far to reach.
bool takes_place(const AnalysedLine& line, std::size_t number);

/// A row of keys that has those and whole octaves' pattern between, with the fingers on them; its
/// upper left corner is at 0.
Inks draw_keys(const FingersOnKeys& fingers);

}  // namespace fingerturn
