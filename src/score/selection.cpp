#include "fingerturn/score.hpp"
#include "score/ties.hpp"
#include "score/timeline.hpp"

#include <algorithm>
#include <utility>

namespace fingerturn {
namespace {

Line cut_line(Line line, BarRange bars) {
  Line cut{line.hand, {}, {}};
  std::size_t next_bar_line = 0;
  for (std::size_t at = 0; at <= line.events.size(); ++at) {
    // A bar line belongs to the bar that it opens or closes.
    const bool opens = at < line.events.size() && bars.contains(line.events[at].bar);
    const bool closes = at > 0 && bars.contains(line.events[at - 1].bar);
    for (;
         next_bar_line < line.bar_lines.size() && line.bar_lines[next_bar_line].before_event <= at;
         ++next_bar_line) {
      const BarLineStyle style = line.bar_lines[next_bar_line].style;
      const bool said_by_itself = style == BarLineStyle::single && !closes;
      if ((opens || closes) && !said_by_itself) cut.bar_lines.push_back({cut.events.size(), style});
    }
    if (opens) cut.events.push_back(std::move(line.events[at]));
  }
  return cut;
}

/// Keeps what holds in the bars from `first` on: of the changes before it only the last.
template <typename Value>
void cut_changes(std::vector<FromBar<Value>>& changes, std::int32_t first) {
  for (FromBar<Value>& change : changes) change.bar = std::max(change.bar, first);
}

void cut_words(std::vector<FromBar<std::string>>& words, BarRange bars) {
  std::erase_if(words, [bars](const auto& each) { return !bars.contains(each.bar); });
}

/// What goes on beyond the bars ends with them.
void cut_signs(ScoreSigns& signs, BarRange bars) {
  const auto is_outside = [bars](const auto& sign) { return !bars.contains(sign.at.bar); };
  std::erase_if(signs.dynamics, is_outside);
  std::erase_if(signs.rest_fermatas, is_outside);
  std::erase_if(signs.hairpins, [bars](const Hairpin& hairpin) {
    return hairpin.from.bar > bars.last || hairpin.to <= BarMoment{bars.first};
  });
  std::erase_if(signs.endings, [bars](const RepeatEnding& ending) {
    return ending.first_bar > bars.last || ending.last_bar < bars.first;
  });
  for (RepeatEnding& ending : signs.endings) {
    ending.is_open |= ending.last_bar > bars.last;
    ending.first_bar = std::max(ending.first_bar, bars.first);
    ending.last_bar = std::min(ending.last_bar, bars.last);
  }
}

}  // namespace

Score only_hand(Score score, Hand hand) {
  for (Passage& passage : score.passages) {
    std::erase_if(passage.lines, [hand](const Line& line) { return line.hand != hand; });
  }
  return score;
}

Passage only_bars(Passage passage, BarRange bars) {
  std::vector<Line> lines;
  for (Line& line : passage.lines) {
    finger_ties_into(line, bars);
    Line cut = cut_line(std::move(line), bars);
    drop_ties_to_nothing(cut);
    resolve_ties(cut);
    if (!cut.events.empty()) lines.push_back(std::move(cut));
  }
  passage.lines = std::move(lines);
  cut_changes(passage.meters, bars.first);
  cut_changes(passage.tempos, bars.first);
  cut_changes(passage.keys, bars.first);
  cut_words(passage.notes, bars);
  cut_words(passage.comments, bars);
  cut_signs(passage.signs, bars);
  settle_changes(passage);
  set_onsets(passage);
  return passage;
}

Score only_bars(Score score, BarRange bars) {
  for (Passage& passage : score.passages) passage = only_bars(std::move(passage), bars);
  return score;
}

}  // namespace fingerturn
