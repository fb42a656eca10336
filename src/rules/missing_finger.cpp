#include "rules/missing_finger.hpp"

#include <fmt/format.h>

namespace fingerturn {

std::optional<Side> side_of_outer_finger(const Strike& strike) noexcept {
  if (!strike.is_single_note()) return std::nullopt;
  if (strike.arrival.lowest == kThumb) return Side::toward_thumb;
  if (strike.arrival.highest == kFifth) return Side::toward_fifth;
  return std::nullopt;
}

namespace {

std::string words_for_row(const Line& line, std::span<const Strike> row) {
  const std::int32_t first = line.events[row.front().event].bar;
  const std::int32_t last = line.events[row.back().event].bar;
  if (row.size() == 1) {
    return row.front().is_single_note() ? "The finger is missing."
                                        : "A finger is missing in this chord or double note.";
  }
  if (first == last) return fmt::format("Fingers are missing in {} events running.", row.size());
  return fmt::format("Fingers are missing in {} events running, to bar {}.", row.size(), last);
}

}  // namespace

void find_missing_fingers(const Line& line, std::span<const Strike> strikes,
                          std::vector<Finding>& findings) {
  for (std::size_t begin = 0; begin < strikes.size(); ++begin) {
    std::size_t end = begin;
    while (end < strikes.size() && !strikes[end].arrival.known()) ++end;
    if (end == begin) continue;
    findings.push_back({kMissingFingerRule.id, Level::info, strikes[begin].event, begin,
                        words_for_row(line, strikes.subspan(begin, end - begin))});
    begin = end;
  }
}

}  // namespace fingerturn
