#include "fingerturn/practice.hpp"
#include "score/timeline.hpp"
#include "views/practice/cells.hpp"
#include "views/practice/minutes.hpp"
#include "views/practice/progress.hpp"
#include "views/practice/steps.hpp"

#include <algorithm>
#include <utility>

namespace fingerturn {
namespace {

/// The hands that have something to learn by themselves, or else all that play.
std::vector<Hand> asking_hands(const Cutting& cutting, BarRange bars) {
  std::vector<Hand> asking;
  std::vector<Hand> playing;
  for (const AnalysedLine line : cutting.piece()) {
    const bool plays = std::ranges::any_of(line.found().events, [&](const EventAnalysis& found) {
      return bars.contains(line.written().events[found.event].bar);
    });
    if (plays) playing.push_back(line.hand());
    if (plays && !cells_of(cutting, line.hand(), bars).empty()) asking.push_back(line.hand());
  }
  return asking.empty() ? playing : asking;
}

/// What the events of the asking hands come to.
void add_events(const AnalysedPassage& piece, PlannedPlace& place) {
  for (const Hand hand : place.hands) {
    const AnalysedLine line = *piece.of_hand(hand);
    for (const auto& [written, found] : line) {
      if (!place.stretch.bars.contains(written.bar)) continue;
      ++place.notes;
      if (!found.full_swing_tempo) continue;
      place.full_swing_tempo = std::min(place.full_swing_tempo.value_or(*found.full_swing_tempo),
                                        *found.full_swing_tempo);
    }
  }
}

std::optional<double> goal_of(const AnalysedPassage& piece, std::int32_t bar) {
  if (piece.found().quarters_per_minute) return piece.found().quarters_per_minute;
  const Tempo* tempo = tempo_in_bar(piece.written(), bar);
  return tempo == nullptr ? std::nullopt : std::optional(tempo->quarters_per_minute());
}

Cutting cutting_around(const AnalysedPassage& piece, BarRange bars) {
  return {piece, with_bars_around(piece.written(), bars)};
}

PlannedPlace place_of(const AnalysedPassage& piece, std::size_t passage, AskingStretch stretch) {
  PlannedPlace place;
  place.passage = passage;
  place.hands = asking_hands(cutting_around(piece, stretch.bars), stretch.bars);
  place.goal = goal_of(piece, stretch.bars.first);
  place.stretch = std::move(stretch);
  add_events(piece, place);
  return place;
}

void add_steps(const AnalysedPassage& piece, PlannedPlace& place,
               const std::vector<PlannedPlace>& earlier) {
  place.steps = steps_of(cutting_around(piece, place.stretch.bars), place, earlier);
  for (const PracticeStep& step : place.steps) {
    place.ladder.insert(place.ladder.end(), step.tempos.begin(), step.tempos.end());
  }
}

/// A stretch and the passage that it lies in.
struct FoundStretch {
  std::size_t passage = 0;
  AskingStretch stretch;
};

std::vector<FoundStretch> stretches_of(const AnalysedScore& analysed) {
  std::vector<FoundStretch> found;
  for (std::size_t p = 0; p < analysed.size(); ++p) {
    for (AskingStretch& stretch : asking_stretches(analysed[p])) {
      found.push_back({p, std::move(stretch)});
    }
  }
  std::ranges::stable_sort(found, [](const FoundStretch& one, const FoundStretch& other) {
    return std::pair(one.stretch.most_points, one.stretch.asks.points) >
           std::pair(other.stretch.most_points, other.stretch.asks.points);
  });
  return found;
}

}  // namespace

PracticePlan plan_practice(const AnalysedScore& analysed, const PracticeOptions& options) {
  PracticePlan plan;
  for (FoundStretch& found : stretches_of(analysed)) {
    if (plan.places.size() < options.top) {
      plan.places.push_back(
          place_of(analysed[found.passage], found.passage, std::move(found.stretch)));
      continue;
    }
    plan.left_out.emplace_back();
    plan.left_out.back().passage = found.passage;
    plan.left_out.back().stretch = std::move(found.stretch);
  }
  if (options.minutes && !plan.places.empty()) share_minutes(plan, *options.minutes);
  std::vector<PlannedPlace> planned;
  for (PlannedPlace& place : plan.places) {
    add_steps(analysed[place.passage], place, planned);
    planned.push_back(std::move(place));
  }
  plan.places = std::move(planned);
  if (options.since != nullptr) add_progress(plan, analysed, *options.since);
  return plan;
}

}  // namespace fingerturn
