#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"
#include "rules/strike.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace fingerturn {

inline constexpr Rule kMissingFingerRule{
    "missing-finger", "2.8", "Missing fingers",
    "An event with a finger missing is undetermined. No guess is made. The watch list names each "
    "row of neighbouring events with fingers missing once, for information.",
    "Our convention."};

inline constexpr Rule kAfterMissingRule{
    "after-missing", "2.8", "After a missing finger",
    "The step after a missing finger is undetermined too. What still follows is kept: a single "
    "thumb plays toward the thumb and a single fifth finger toward the fifth, so their side is "
    "known even there, though not whether they are single or double. That is known again as soon "
    "as the sides of two neighbouring events are, or the same finger plays again (2.6).",
    "Our convention."};

/// Rule 2.8: the side that a single thumb or fifth finger has by itself; none for all others.
std::optional<Side> side_of_outer_finger(const Strike& strike) noexcept;

/// A row of neighbouring events with fingers missing.
struct MissingRow {
  std::size_t event = 0;  ///< the first event of the row in Line::events
  std::size_t index = 0;  ///< and its number among the struck events of the line
  std::size_t events = 0;
  std::int32_t first_bar = 0;
  std::int32_t last_bar = 0;
  bool single_note = false;  ///< its first event is one
};

/// Rule 2.8: takes an event into the rows of neighbouring events with fingers missing. Events are
/// taken in their order.
void add_to_missing_rows(const Line& line, const EventAnalysis& entry,
                         std::vector<MissingRow>& rows);

/// Rule 2.8: adds a finding for each row.
void find_missing_fingers(std::span<const MissingRow> rows, std::vector<Finding>& findings);

}  // namespace fingerturn
