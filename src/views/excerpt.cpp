#include "fingerturn/excerpt.hpp"

#include "fingerturn/analysed.hpp"

#include <algorithm>
#include <utility>

namespace fingerturn {
namespace {

bool plays(const Passage& passage) {
  return std::any_of(passage.lines.begin(), passage.lines.end(), [](const Line& line) {
    return std::any_of(line.events.begin(), line.events.end(),
                       [](const Event& event) { return event.struck_count() > 0; });
  });
}

std::string title_for(const std::string& title, const Passage& cut) {
  const std::vector<std::int32_t> bars = bars_of(cut);
  const std::string words = to_string(BarRange{bars.front(), bars.back()});
  return title.empty() ? words : title + ", " + words;
}

/// The places in `Line::events` of the events in these bars.
std::vector<std::size_t> places_in(const Line& line, BarRange bars) {
  std::vector<std::size_t> places;
  for (std::size_t at = 0; at < line.events.size(); ++at) {
    if (bars.contains(line.events[at].bar)) places.push_back(at);
  }
  return places;
}

bool same_turn(const EventAnalysis& one, const EventAnalysis& other) {
  return one.rotation == other.rotation && one.side == other.side && one.prepare == other.prepare &&
         one.swings == other.swings && one.crossing == other.crossing;
}

/// Adds what changes of one line of which `part` is left.
void add_changed(const AnalysedLine& whole, const AnalysedLine& part, BarRange bars,
                 std::vector<ChangedTurn>& all) {
  const std::vector<std::size_t> places = places_in(whole.written(), bars);
  const std::vector<EventAnalysis>& entries = whole.found().events;
  auto entry = entries.begin();
  for (const auto& [event, here] : part) {
    const std::size_t place = places[here.event];
    while (entry != entries.end() && entry->event < place) ++entry;
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
}

std::vector<ChangedTurn> changed_turns(const AnalysedPassage& whole, const AnalysedPassage& part,
                                       BarRange bars) {
  std::vector<ChangedTurn> all;
  for (const AnalysedLine line : part) add_changed(*whole.of_hand(line.hand()), line, bars, all);
  return all;
}

}  // namespace

Excerpt excerpt(const Score& score, BarRange bars) {
  Excerpt excerpt;
  for (std::size_t p = 0; p < score.passages.size(); ++p) {
    Passage cut = only_bars(score.passages[p], bars);
    if (!plays(cut)) continue;
    cut.title = title_for(cut.title, cut);
    const AnalysedScore whole({}, Score{{score.passages[p]}});
    const AnalysedScore part({}, Score{{cut}});
    excerpt.passages.push_back({p, changed_turns(whole[0], part[0], bars)});
    excerpt.score.passages.push_back(std::move(cut));
  }
  return excerpt;
}

}  // namespace fingerturn
