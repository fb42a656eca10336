#include "views/practice/cutting.hpp"

#include "score/timeline.hpp"
#include "views/changed_turns.hpp"

#include <algorithm>
#include <iterator>
#include <numeric>
#include <utility>

namespace fingerturn {
namespace {

std::size_t first_in(const Line& line, BarRange bars) {
  const auto first = std::ranges::find_if(
      line.events, [bars](const Event& event) { return bars.contains(event.bar); });
  return static_cast<std::size_t>(first - line.events.begin());
}

std::vector<std::size_t> places_from(std::size_t first, std::size_t count) {
  std::vector<std::size_t> places(count);
  std::iota(places.begin(), places.end(), first);
  return places;
}

/// What is said of a piece as a whole is not said of a few notes of it.
void keep_music(Passage& passage) {
  passage.notes.clear();
  passage.comments.clear();
  passage.remarks.clear();
  passage.signs = {};
}

}  // namespace

Cutting::Cutting(const AnalysedPassage& piece, BarRange around)
    : piece_(piece), around_(around), here_(only_bars(piece.written(), around)) {
  keep_music(here_);
}

std::size_t Cutting::places_before(Hand hand) const {
  return first_in(*line_of_hand(piece_.written(), hand), around_);
}

PracticeMusic Cutting::events(Hand hand, std::size_t first, std::size_t last) const {
  const std::size_t before = places_before(hand);
  PracticeMusic cut;
  cut.events = places_from(first, last - first + 1);
  cut.music = here_;
  // A bar of which a part is missing would not fill its meter.
  cut.music.meters.clear();
  cut.music.lines = {only_events(*line_of_hand(here_, hand), first - before, last - before)};
  settle_changes(cut.music);
  set_onsets(cut.music);
  finish(cut);
  return cut;
}

PracticeMusic Cutting::in_values(const PracticeMusic& events,
                                 const std::vector<Fraction>& values) const {
  PracticeMusic changed = events;
  Line& line = changed.music.lines.front();
  for (std::size_t i = 0; i < line.events.size(); ++i) line.events[i].duration = values[i];
  line.bar_lines.clear();
  for (Event& event : line.events) event.bar = line.events.front().bar;
  settle_changes(changed.music);
  set_onsets(changed.music);
  finish(changed);
  return changed;
}

PracticeMusic Cutting::bars(BarRange bars) const {
  PracticeMusic cut;
  cut.music = only_bars(piece_.written(), bars);
  keep_music(cut.music);
  finish(cut);
  return cut;
}

void Cutting::finish(PracticeMusic& music) const {
  const AnalysedScore alone({}, Score{{music.music}});
  music.changed.clear();
  for (const AnalysedLine line : alone[0]) {
    const AnalysedLine of = *piece_.of_hand(line.hand());
    const std::int32_t bar = line.written().events.front().bar;
    const std::vector<std::size_t> places =
        music.events.empty()
            ? places_from(first_in(of.written(), {bar, kHighestBar}), line.written().events.size())
            : music.events;
    std::ranges::move(changed_turns(of, line, places), std::back_inserter(music.changed));
  }
}

}  // namespace fingerturn
