#pragma once

#include "read/musicxml/written_note.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace fingerturn {

/// The bars in which notes were given to a hand that is not their staff's, by the reason.
struct HandsByOther {
  std::vector<std::int32_t> visits;   ///< their voice visits the other staff
  std::vector<std::int32_t> signs;    ///< the score says which hand
  std::vector<std::int32_t> reaches;  ///< their staff's hand cannot reach them
};

/// Gives each note of a part its hand: that of its staff, the first the right hand's and the others
/// the left's, or `only` where the part is one hand's.
HandsByOther choose_hands(WrittenPart& part, std::optional<Hand> only);

}  // namespace fingerturn
