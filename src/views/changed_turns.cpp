#include "views/changed_turns.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

bool same_turn(const EventAnalysis& one, const EventAnalysis& other) {
  return one.rotation == other.rotation && one.side == other.side && one.prepare == other.prepare &&
         one.swings == other.swings && one.crossing == other.crossing;
}

}  // namespace

std::vector<ChangedTurn> changed_turns(const AnalysedLine& whole, const AnalysedLine& part,
                                       std::span<const std::size_t> places) {
  std::vector<ChangedTurn> all;
  const std::vector<EventAnalysis>& entries = whole.found().events;
  for (const auto& [event, here] : part) {
    const std::size_t place = places[here.event];
    const auto entry = std::ranges::lower_bound(entries, place, {}, &EventAnalysis::event);
    const bool struck = entry != entries.end() && entry->event == place;
    const bool same_notes = whole.written().events[place].struck_count() == event.struck_count();
    if (struck && same_notes && same_turn(*entry, here)) continue;
    ChangedTurn& changed = all.emplace_back();
    changed.hand = part.hand();
    changed.here = here;
    changed.event_in_score = place;
    if (!struck) continue;
    changed.in_score = *entry;
    const bool follows = entry != entries.begin() && (entry - 1)->gesture == entry->gesture;
    if (follows) changed.after = (entry - 1)->event;
  }
  return all;
}

}  // namespace fingerturn
