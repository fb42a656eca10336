#pragma once

#include "fingerturn/analysed.hpp"
#include "fingerturn/places.hpp"
#include "fingerturn/rule.hpp"

#include <vector>

namespace fingerturn {

inline constexpr Rule kPlacesRule{
    "places", "6.4", "The places that ask most",
    "What a bar asks is a sum over both hands: a point for every double next to another double of "
    "the hand, and one more where a key is held meanwhile; for every passing (3), and one more an "
    "eighth of a second or less after a note; for every carry of four white keys or more, or of 20 "
    "or more a second, that is no leap; two for a leap, three for a quick one; one where there is "
    "time for less than four fifths of a swing (6.3), and where one hand is single and the other "
    "double "
    "(4.5); for what else is on the watch list a caution three, a strain five, and each kind of "
    "information once in a hand one, but nothing for missing fingers and swing rates. A bar "
    "deserves work that has three points or more and at least one and a half times as many as the "
    "bars of the passage have on average; where there is none, the bars that have most. Such a bar "
    "is shown with the one before and the one after it; places that meet are one.",
    "Our convention; that work begins at the places that ask most is common practice, no source."};

/// Rule 6.4: the places of the bars that a passage shows, in their order.
std::vector<PracticePlace> places_of(const AnalysedPassage& passage);

/// How many doubles each bar of a passage has, of the bars that are shown.
std::vector<BarDoubles> doubles_of(const AnalysedPassage& passage);

}  // namespace fingerturn
