#pragma once

#include "fingerturn/read.hpp"
#include "read/musicxml/part.hpp"
#include "read/reporter.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include <pugixml.hpp>

namespace fingerturn {

/// The sign of the first clef on a staff.
enum class ClefSign : std::uint8_t { none, g, f, c, percussion };

/// What a part's entry in the part list and its first measures say of it.
struct PartInfo {
  std::size_t number = 1;  ///< its place in the part list, from 1
  std::string name;
  bool keyboard = false;  ///< by its name, sound or MIDI program
  bool other = false;     ///< by these surely something else
  bool percussion = false;
  std::uint32_t staves = 1;
  ClefSign clef = ClefSign::none;
  std::vector<MeasureElement> measures;
};

/// The parts of a score, partwise or timewise, in the order of its part list.
std::vector<PartInfo> parts_of(pugi::xml_node score);

/// The parts that one player plays: one part, or two of one staff each, the upper first.
struct ChosenParts {
  std::vector<std::size_t> parts;  ///< places among all parts
  std::vector<std::string> remarks;
};

/// Chooses what to read: the part that was asked for, else those for keyboard, else the only or
/// first part. Reports a number that no part has.
std::vector<ChosenParts> choose_parts(const std::vector<PartInfo>& parts,
                                      const ReadOptions& options, Reporter& reporter);

}  // namespace fingerturn
