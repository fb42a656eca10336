#pragma once

#include "read/musicxml/written_note.hpp"

#include <string>
#include <string_view>
#include <vector>

#include <pugixml.hpp>

namespace fingerturn {

/// The fingers that a text such as "3", "4-1" or "(2)" names, in their order; empty where it names
/// none. `out_of_range` tells of a number that is no finger's.
struct FingerText {
  std::vector<Finger> fingers;
  bool out_of_range = false;
};
FingerText fingers_in(std::string_view text);

/// Gives the note, which is to be the next of the part, the fingers of its `note` element:
/// `substitution` is a silent change, `alternate` an alternative, and numbers that say nothing of
/// one another are silent changes until they are seen to be spread over a chord. Where its
/// `notations` say that they hold a suggestion, it goes to those of the part, and what is no finger
/// to its problems.
void add_fingerings(pugi::xml_node element, WrittenNote& note, WrittenPart& part);

/// Settles what only the whole chord shows. Fingers that are stacked on its first note, one for
/// each of its notes, are spread over it: the lowest number on the lowest note in the right hand,
/// the other way in the left. Stacked in any other number they are taken off and reported. Then
/// notes that are left without a finger take what was suggested for them.
void settle_fingers(WrittenPart& part);

}  // namespace fingerturn
