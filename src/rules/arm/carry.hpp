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
    "its own. The fingers reach one white key further to either side without the arm, the thumb "
    "two and a half outward and the fifth finger one and a half, so that an octave with 1 and 5 "
    "needs no arm; where the reach of a hand is given (5.3), the thumb reaches further or less far "
    "in proportion. So every event leaves the hand some room; where its notes leave none, the hand "
    "takes the middle. Of all paths through that room the forearm takes the one that travels least "
    "and, of these, the one that keeps the hand nearest to where the outer fingers of each event "
    "have a key each, so that a figure that comes again an octave higher is carried in the same "
    "way. Each move is given in white keys, to the right or to the left. What stands after a rest "
    "changes no place before it. An event with a finger missing leaves the hand where it was. "
    "After a silent change of finger the move shows at the next note.",
    "The position of five fingers on five white keys is common practice, no source; the rest is "
    "our model, and so our convention."};

/// Rule 4.2: the places that each strike leaves to the hand, seen from it: they grow toward its
/// fifth finger.
std::vector<Allowed> places_of_hand(const Line& line, std::span<const Strike> strikes,
                                    std::optional<int> reach_semitones);

/// Rule 4.2: for each strike the white keys that the arm carries the hand to reach it, above 0 to
/// the right; none where a finger is missing. `place` is where the hand is before them, if that is
/// known, seen from it and in quarters of a white key, and afterwards where they leave it.
std::vector<std::optional<double>> carries(const Line& line, std::span<const Strike> strikes,
                                           std::optional<int> reach_semitones,
                                           std::optional<int>& place);

}  // namespace fingerturn
