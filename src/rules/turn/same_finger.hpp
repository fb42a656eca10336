#pragma once

#include "fingerturn/rule.hpp"
#include "rules/strike.hpp"

namespace fingerturn {

inline constexpr Rule kSameFingerRule{
    "same-finger", "2.6", "Same finger again",
    "Where the same finger plays again, or the middle of the fingers stays, the side is kept and "
    "the note is a double: it needs a swing of its own. On another key the arm carries the finger "
    "there.",
    "For the repeated key: T. Matthay, The Visible and Invisible in Pianoforte Technique (1932), "
    "through a digest: the same key repeated repeats the same rotary exertion. On another key, and "
    "for double notes: our convention."};

/// Rule 2.6: whether the same finger repeats the same key, which a published source covers.
bool repeats_key(const Strike& from, const Strike& to) noexcept;

}  // namespace fingerturn
