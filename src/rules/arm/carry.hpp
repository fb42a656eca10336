#pragma once

#include "fingerturn/rule.hpp"
#include "hand/least_travel.hpp"
#include "rules/strike.hpp"

#include <optional>
#include <span>
#include <vector>

namespace fingerturn {

inline constexpr Rule kCarryRule{
    "carry", "4.2", "How far the arm carries the hand",
    "A finger on a key places the hand: where finger 3 would lie if each finger had a white key of "
    "its own. The fingers reach one white key further to either side without the arm, so every "
    "event leaves the hand some room; where its notes leave none, the hand takes the middle. Of "
    "all paths through that room the forearm takes the one that travels least and, of these, the "
    "one with the fewest moves: the hand stays while it can, and goes no further than it must. "
    "Each move is given in white keys, to the right or to the left. The first place of a line is "
    "chosen with regard to the notes up to the first rest. An event with a finger missing leaves "
    "the hand where it was. After a silent change of finger the move shows at the next note.",
    "The position of five fingers on five white keys is common practice, no source; the rest is "
    "our model, and so our convention."};

/// Rule 4.2: the places that each strike leaves to the hand.
std::vector<Allowed> places_of_hand(const Line& line, std::span<const Strike> strikes);

/// Rule 4.2: for each strike the white keys that the arm carries the hand to reach it, above 0 to
/// the right; none where a finger is missing. `place` is where the hand is before them, if that is
/// known, in quarters of a white key, and afterwards where they leave it.
std::vector<std::optional<double>> carries(const Line& line, std::span<const Strike> strikes,
                                           std::optional<int>& place);

}  // namespace fingerturn
