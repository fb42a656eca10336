#include "fingerturn/score.hpp"
#include "score/ties.hpp"
#include "score/timeline.hpp"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <utility>

namespace fingerturn {
namespace {

/// Events of a line, from one place to before another.
struct EventRange {
  std::size_t begin = 0;
  std::size_t end = 0;

  [[nodiscard]] bool contains(std::size_t at) const noexcept { return at >= begin && at < end; }
};

EventRange events_in(const Line& line, BarRange bars) {
  const auto before = [bars](const Event& event) { return event.bar < bars.first; };
  const auto past = [bars](const Event& event) { return event.bar > bars.last; };
  const auto first = std::ranges::find_if_not(line.events, before);
  const auto end = std::find_if(first, line.events.end(), past);
  return {static_cast<std::size_t>(first - line.events.begin()),
          static_cast<std::size_t>(end - line.events.begin())};
}

/// The line with only these events. A bar line belongs to the event that it opens or closes.
Line cut_line(Line line, EventRange events) {
  finger_ties_into(line, events.begin, events.end);
  Line cut{line.hand, {}, {}};
  for (const BarLine& bar_line : line.bar_lines) {
    const bool opens = events.contains(bar_line.before_event);
    const bool closes = bar_line.before_event > 0 && events.contains(bar_line.before_event - 1);
    const bool said_by_itself = bar_line.style == BarLineStyle::single && !closes;
    if ((!opens && !closes) || said_by_itself) continue;
    cut.bar_lines.push_back({bar_line.before_event - events.begin, bar_line.style});
  }
  const auto at = [&line](std::size_t place) {
    return std::make_move_iterator(line.events.begin() + static_cast<std::ptrdiff_t>(place));
  };
  cut.events.assign(at(events.begin), at(events.end));
  drop_ties_to_nothing(cut);
  resolve_ties(cut);
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
    const EventRange events = events_in(line, bars);
    Line cut = cut_line(std::move(line), events);
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

Line only_events(Line line, std::size_t first, std::size_t last) {
  return cut_line(std::move(line), {first, last + 1});
}

Score only_bars(Score score, BarRange bars) {
  for (Passage& passage : score.passages) passage = only_bars(std::move(passage), bars);
  return score;
}

}  // namespace fingerturn
