#include "rules/turn/missing_finger.hpp"

#include <fmt/core.h>

namespace fingerturn {

std::optional<Side> side_of_outer_finger(const Strike& strike) noexcept {
  if (!strike.is_single_note()) return std::nullopt;
  if (strike.arrival.lowest == kThumb) return Side::toward_thumb;
  if (strike.arrival.highest == kFifth) return Side::toward_fifth;
  return std::nullopt;
}

namespace {

std::string words_for_row(const MissingRow& row) {
  if (row.events == 1) {
    return row.single_note ? "The finger is missing."
                           : "A finger is missing in this chord or double note.";
  }
  if (row.first_bar == row.last_bar) {
    return fmt::format("Fingers are missing in {} events running.", row.events);
  }
  return fmt::format("Fingers are missing in {} events running, to bar {}.", row.events,
                     row.last_bar);
}

}  // namespace

void add_to_missing_rows(const Line& line, const EventAnalysis& entry,
                         std::vector<MissingRow>& rows) {
  const Event& event = line.events[entry.event];
  if (event.is_fingered()) return;
  if (rows.empty() || rows.back().index + rows.back().events != entry.index) {
    rows.push_back({entry.event, entry.index, 0, event.bar, event.bar, event.struck_count() == 1});
  }
  ++rows.back().events;
  rows.back().last_bar = event.bar;
}

void find_missing_fingers(std::span<const MissingRow> rows, std::vector<Finding>& findings) {
  for (const MissingRow& row : rows) {
    findings.push_back(
        {kMissingFingerRule.id, WatchLevel::info, row.event, row.index, words_for_row(row)});
  }
}

}  // namespace fingerturn
