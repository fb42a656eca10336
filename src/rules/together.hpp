#pragma once

#include "fingerturn/analysed.hpp"
#include "fingerturn/rule.hpp"

#include <optional>

namespace fingerturn {

inline constexpr Rule kTogetherRule{
    "together", "4.5", "Hands together",
    "At every onset that both hands share, and where the events of both have a side, the forearms "
    "turn parallel (both to the left or both to the right) or contrary (one each way). Where one "
    "hand's event is single and the other's double the place is listed: there what was practised "
    "hands separately does not simply lie side by side. Grace notes share no onset.",
    "The turns follow from 2.1 to 2.8; that such places deserve practice is common practice, no "
    "source."};

/// Rule 4.5: how the hands go together; none where not both play or no onsets are known.
std::optional<Together> hands_together(const AnalysedPassage& passage);

}  // namespace fingerturn
