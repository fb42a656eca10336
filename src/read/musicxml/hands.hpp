#pragma once

#include "read/musicxml/part_list.hpp"
#include "read/musicxml/written_note.hpp"

#include <optional>
#include <string>
#include <vector>

namespace fingerturn {

/// Gives each note of a part its hand, and says in words how that was decided. A part with staves:
/// the first is the right hand's, the others the left's. A part of one staff: the hand that is
/// given, else by its clef.
std::vector<std::string> give_hands(WrittenPart& part, const PartInfo& info,
                                    std::optional<Hand> given);

/// The same of a part that is one hand's, but where signs in it say otherwise.
std::vector<std::string> give_hand(WrittenPart& part, Hand hand);

}  // namespace fingerturn
