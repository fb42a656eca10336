#include "fingerturn/excerpt.hpp"

#include <algorithm>
#include <utility>

namespace fingerturn {
namespace {

/// A line of the score with its analysis.
struct Analysed {
  const Line& line;
  const LineAnalysis& analysis;
};

bool plays(const PassageAnalysis& passage) {
  return std::any_of(passage.lines.begin(), passage.lines.end(),
                     [](const LineAnalysis& line) { return !line.events.empty(); });
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
void add_changed(const Analysed& whole, const Analysed& part, BarRange bars, ChangedTurn changed,
                 std::vector<ChangedTurn>& all) {
  const std::vector<std::size_t> places = places_in(whole.line, bars);
  const std::vector<EventAnalysis>& entries = whole.analysis.events;
  auto entry = entries.begin();
  for (const EventAnalysis& here : part.analysis.events) {
    changed.here = here;
    changed.event_in_score = places[here.event];
    while (entry != entries.end() && entry->event < changed.event_in_score) ++entry;
    const bool struck = entry != entries.end() && entry->event == changed.event_in_score;
    const bool same_notes = whole.line.events[changed.event_in_score].struck_count() ==
                            part.line.events[here.event].struck_count();
    if (struck && same_notes && same_turn(*entry, here)) continue;
    changed.in_score.reset();
    changed.after.reset();
    if (struck) changed.in_score = *entry;
    const bool follows =
        entry != entries.begin() && struck && (entry - 1)->gesture == entry->gesture;
    if (follows) changed.after = (entry - 1)->event;
    all.push_back(changed);
  }
}

/// A passage with its analysis.
struct AnalysedPassage {
  const Passage& passage;
  const PassageAnalysis& analysis;

  [[nodiscard]] Analysed line(std::size_t at) const {
    return {passage.lines[at], analysis.lines[at]};
  }
};

std::vector<ChangedTurn> changed_turns(const AnalysedPassage& whole, const AnalysedPassage& part,
                                       BarRange bars) {
  std::vector<ChangedTurn> all;
  for (std::size_t l = 0; l < part.passage.lines.size(); ++l) {
    ChangedTurn changed;
    changed.line = l;
    const Line* line = line_of_hand(whole.passage, part.passage.lines[l].hand);
    changed.line_in_score = static_cast<std::size_t>(line - whole.passage.lines.data());
    add_changed(whole.line(changed.line_in_score), part.line(l), bars, changed, all);
  }
  return all;
}

}  // namespace

Excerpt excerpt(const Score& score, BarRange bars) noexcept {
  const Analysis in_score = analyse(score);
  Score cut = only_bars(score, bars);
  const Analysis here = analyse(cut);
  Excerpt excerpt;
  for (std::size_t p = 0; p < cut.passages.size(); ++p) {
    if (!plays(here.passages[p])) continue;
    Passage& passage = cut.passages[p];
    passage.title = title_for(passage.title, passage);
    excerpt.passages.push_back({p, changed_turns({score.passages[p], in_score.passages[p]},
                                                 {passage, here.passages[p]}, bars)});
    excerpt.score.passages.push_back(std::move(passage));
  }
  return excerpt;
}

}  // namespace fingerturn
