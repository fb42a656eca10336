#include "fingerturn/excerpt.hpp"

#include "fingerturn/analysed.hpp"
#include "views/changed_turns.hpp"

#include <algorithm>
#include <iterator>
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

std::vector<ChangedTurn> changed_in(const AnalysedPassage& whole, const AnalysedPassage& part,
                                    BarRange bars) {
  std::vector<ChangedTurn> all;
  for (const AnalysedLine line : part) {
    const AnalysedLine of = *whole.of_hand(line.hand());
    std::ranges::move(changed_turns(of, line, places_in(of.written(), bars)),
                      std::back_inserter(all));
  }
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
    excerpt.passages.push_back({p, changed_in(whole[0], part[0], bars)});
    excerpt.score.passages.push_back(std::move(cut));
  }
  return excerpt;
}

}  // namespace fingerturn
