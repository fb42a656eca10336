#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"
#include "rules/strike.hpp"

#include <cstdint>
#include <optional>

namespace fingerturn {

inline constexpr Rule kSideRule{
    "side", "2.1", "The side of a note",
    "A note is played toward the side of its finger as seen from the finger that played last: from "
    "a lower to a higher finger number toward the fifth, from a higher to a lower toward the "
    "thumb. "
    "The direction of the pitches plays no part: after 3, a thumb passed under plays toward the "
    "thumb although the scale rises; after the thumb, a finger passed over it plays toward the "
    "fifth although the scale falls. Toward the fifth is to the right in the right hand and to the "
    "left in the left; the forearm supinates (supination). Toward the thumb it pronates "
    "(pronation).",
    "T. Matthay, The First Principles of Pianoforte Playing (1905), sections 48-49; The Fore-arm "
    "Rotation Principle in Pianoforte Playing (1912); The Visible and Invisible in Pianoforte "
    "Technique (1932), through a digest: a third finger turned over the fifth plays toward the "
    "thumb, and a trill between the thumb and a finger turned over it alternates the sides."};

inline constexpr Rule kDoubleNoteRule{
    "double-note", "2.5", "Double notes",
    "A double note other than 1-5 takes part in the line by the middle of its two fingers: the "
    "lowest and the highest finger are added, a single note counting its finger twice, and the "
    "sums are compared as finger numbers are in 2.1. From 1-3 to 2-4 goes toward the fifth.",
    "Our convention, after T. Matthay, The Visible and Invisible in Pianoforte Technique (1932), "
    "through a digest: double thirds follow the rule of single notes in places."};

inline constexpr Rule kSilentChangeRule{
    "silent-change", "2.7", "Silent change of finger",
    "Where the finger is changed on a held key, the first finger strikes the note. The change "
    "turns "
    "the forearm too, without a stroke, toward the side of the new finger as in 2.1; the next step "
    "is measured from the last finger, and against the side of the last change. So after 5 that "
    "changes to 1, 3 is a single. A finger written on a tied continuation that stands alone is "
    "such "
    "a change too.",
    "That the next step is measured from the last finger is common practice, no source; that the "
    "change turns the forearm, and the tied continuation, are our convention."};

/// A step from one strike to the next, as the fingers make it.
enum class FingerStep : std::uint8_t { unknown, toward_fifth, toward_thumb, same };

/// Rules 2.1 and 2.5: the step from some fingers to others, all of them known.
FingerStep step_between(const OuterFingers& from, const OuterFingers& to) noexcept;

/// Rules 2.1, 2.5 and 2.7: the step between two strikes of one gesture. Unknown where a finger of
/// either is missing.
FingerStep finger_step(const Strike& from, const Strike& to) noexcept;

/// The side of a step; none where it is unknown or the finger stays.
std::optional<Side> side_of(FingerStep step) noexcept;

}  // namespace fingerturn
