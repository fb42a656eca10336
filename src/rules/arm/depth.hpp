#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"
#include "hand/least_travel.hpp"
#include "rules/strike.hpp"

#include <optional>
#include <span>
#include <vector>

namespace fingerturn {

inline constexpr Rule kInAndOutRule{
    "in-and-out", "4.3", "In and out",
    "The depth of the hand is 0 with the thumb on a white key in front of the black ones and 1 "
    "with the thumb on a black key. Every finger leaves the hand some room: the thumb 0 to 1 on a "
    "white key and 1 to 2 on a black one; fingers 2, 3 and 4 0 to 0.5 on white and 0 to 1 on "
    "black; the fifth finger 0 to 0.5 on white and 0.5 to 1.5 on black. The path of least travel "
    "is taken as in 4.2, and of such paths the one furthest out. A move to a greater depth is in, "
    "to a "
    "smaller one out.",
    "That the hand goes in and out to serve fingers of unequal length and the black keys is common "
    "practice, no source; the numbers are our model, and so our convention."};

/// Rule 4.3: the depths that each strike leaves to the hand, in quarters.
std::vector<Allowed> depths_of_hand(const Line& line, std::span<const Strike> strikes);

/// Rule 4.3: whether the notes of a chord allow no depth in common.
bool has_no_common_depth(const Event& event) noexcept;

/// How far in the hand is, and the move to there.
struct InAndOut {
  std::optional<double> depth;  ///< from 0 to 2; none where a finger is missing
  std::optional<InOut> move;    ///< none where the depth stays
};

/// Rule 4.3: the depth of the hand at each strike. `place` is its depth before them, if that is
/// known, in quarters, and afterwards the one in which they leave it.
std::vector<InAndOut> ins_and_outs(const Line& line, std::span<const Strike> strikes,
                                   std::optional<int>& place);

}  // namespace fingerturn
