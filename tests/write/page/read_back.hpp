#pragma once

#include "write/page/staff/system.hpp"

#include <set>
#include <string>
#include <vector>

namespace fingerturn::tests {

/// What a player reads of a bar of a hand: the pitches of the heads that are struck, and their
/// values where no tie is at them ("C#4 1/8"; "^" of grace notes, "~" where a tie hides the value).
struct BarRead {
  std::multiset<std::string> pitches;
  std::multiset<std::string> values;
};

/// Reads notes from the inks of systems alone: lines, clefs, keys, accidentals, heads, stems,
/// beams, flags, dots, ties, octave signs and tuplets; for each staff its bars, one after another.
std::vector<std::vector<BarRead>> read_back(const std::vector<System>& systems, std::size_t staves);

}  // namespace fingerturn::tests
