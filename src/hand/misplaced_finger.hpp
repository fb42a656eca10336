#pragma once

#include "fingerturn/rule.hpp"
#include "fingerturn/score.hpp"

#include <cstddef>
#include <optional>

namespace fingerturn {

inline constexpr Rule kMisplacedFingerRule{
    "misplaced-finger", "5.2", "A finger meant for another note",
    "A finger that stands alone in a chord or double note leaves the others no fingers within "
    "their practical spans (5.3), while on another outer note of the chord it would leave them "
    "comfortable ones. Most likely it is meant for that note: it is said for information, nothing "
    "else is claimed of the chord, and suggestions go on without it.",
    "Our convention, with the table of spans (5.3)."};

/// A finger that is probably meant for another note of its chord.
struct MisplacedFinger {
  Finger finger = 0;
  std::size_t note = 0;   ///< on which it is written, as a place in Event::notes
  std::size_t meant = 0;  ///< the note that it is probably meant for
};

/// Rule 5.2: the only written finger of a chord, where it is probably meant for another note.
/// Suggested fingers are not looked at.
///
///     C4:5+E4+G4    right hand: 5 on C4 is meant for G4
std::optional<MisplacedFinger> misplaced_finger(Hand hand, const Event& event,
                                                std::optional<int> reach_semitones);

}  // namespace fingerturn
