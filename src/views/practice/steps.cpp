#include "views/practice/steps.hpp"

#include "score/timeline.hpp"
#include "text/numbers.hpp"
#include "text/words.hpp"
#include "views/practice/cells.hpp"
#include "views/practice/rhythms.hpp"
#include "views/practice/tempos.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace fingerturn {
namespace {

class StepsOfPlace {
 public:
  StepsOfPlace(const Cutting& cutting, const PlannedPlace& place)
      : cutting_(cutting), place_(place), bars_(place.stretch.bars) {}

  std::vector<PracticeStep> steps(const std::vector<PlannedPlace>& earlier) {
    const BarDemand& asks = place_.stretch.asks;
    if (asks.doubles + asks.passings > 0) add_note_by_note();
    add_of_hands(PracticeStepKind::cells, cells_of);
    add_tempos();
    if (asks.doubles + asks.passings > 0) add_of_hands(PracticeStepKind::rhythms, rhythms_of);
    add_together();
    add_joining(earlier);
    return std::move(steps_);
  }

 private:
  [[nodiscard]] const AnalysedPassage& piece() const { return cutting_.piece(); }

  PracticeMusic bars(BarRange bars) const {
    PracticeMusic music = cutting_.bars(bars);
    music.words = to_string(bars);
    return music;
  }

  void add_note_by_note() {
    PracticeStep step{PracticeStepKind::note_by_note, {bars(bars_)}, {}};
    std::erase_if(step.music.front().music.lines, [this](const Line& line) {
      return std::ranges::find(place_.hands, line.hand) == place_.hands.end();
    });
    std::erase_if(step.music.front().changed, [this](const ChangedTurn& changed) {
      return std::ranges::find(place_.hands, changed.hand) == place_.hands.end();
    });
    steps_.push_back(std::move(step));
  }

  template <typename MusicOf>
  void add_of_hands(PracticeStepKind kind, MusicOf music_of) {
    PracticeStep step{kind, {}, {}};
    for (const Hand hand : place_.hands) {
      std::ranges::move(music_of(cutting_, hand, bars_), std::back_inserter(step.music));
    }
    if (!step.music.empty()) steps_.push_back(std::move(step));
  }

  void add_tempos() {
    if (!place_.full_swing_tempo) return;
    steps_.push_back({PracticeStepKind::full_swings,
                      {},
                      full_swing_steps(*place_.full_swing_tempo, place_.goal)});
    std::vector<TempoStep> smaller = smaller_swing_steps(*place_.full_swing_tempo, place_.goal);
    if (smaller.empty()) return;
    steps_.push_back({PracticeStepKind::smaller_swings, {}, std::move(smaller)});
  }

  /// The bars in which one hand is single and the other double, and the beats of each; then all.
  void add_together() {
    if (!piece().found().together) return;
    std::map<std::int32_t, std::vector<std::string>> beats;
    const Line& right = piece()[0].written();
    const std::vector<std::size_t> beginnings = bar_beginnings(right);
    for (const KindsDiffer& differ : piece().found().together->kinds_differ) {
      const std::int32_t bar = right.events[differ.right_event].bar;
      if (!bars_.contains(bar)) continue;
      const auto beat = beat_of(piece().written(), right, differ.right_event, beginnings);
      if (beat) {
        beats[bar].push_back(beat_text(*beat));
      } else {
        beats[bar];
      }
    }
    if (beats.empty()) return;
    PracticeStep step{PracticeStepKind::hands_together, {}, {}};
    for (const auto& [bar, at] : beats) {
      step.music.push_back(bars({bar, bar}));
      if (at.empty()) continue;
      step.music.back().words =
          fmt::format("bar {} ({} {})", bar, at.size() == 1 ? "beat" : "beats", enumerated(at));
    }
    if (bars_.first != bars_.last) step.music.push_back(bars(bars_));
    steps_.push_back(std::move(step));
  }

  void add_joining(const std::vector<PlannedPlace>& earlier) {
    constexpr std::int32_t kMostBetween = 8;
    PracticeStep step{PracticeStepKind::joining, {}, {}};
    const BarRange around = with_bars_around(piece().written(), bars_);
    if (around != bars_) step.music.push_back(bars(around));
    const PlannedPlace* nearest = nullptr;
    for (const PlannedPlace& other : earlier) {
      if (other.passage != place_.passage || between(other) > kMostBetween) continue;
      if (nearest == nullptr || between(other) < between(*nearest)) nearest = &other;
    }
    if (nearest != nullptr) {
      const BarRange& other = nearest->stretch.bars;
      step.music.push_back(
          bars({std::min(bars_.first, other.first), std::max(bars_.last, other.last)}));
      step.music.back().words += fmt::format(", with place {}", nearest - earlier.data() + 1);
    }
    if (!step.music.empty()) steps_.push_back(std::move(step));
  }

  /// How many bars lie between this place and another.
  [[nodiscard]] std::int32_t between(const PlannedPlace& other) const {
    const BarRange& bars = other.stretch.bars;
    return bars.first > bars_.last ? bars.first - bars_.last - 1 : bars_.first - bars.last - 1;
  }

  const Cutting& cutting_;
  const PlannedPlace& place_;
  BarRange bars_;
  std::vector<PracticeStep> steps_;
};

}  // namespace

std::vector<PracticeStep> steps_of(const Cutting& cutting, const PlannedPlace& place,
                                   const std::vector<PlannedPlace>& earlier) {
  return StepsOfPlace(cutting, place).steps(earlier);
}

BarRange with_bars_around(const Passage& passage, BarRange bars) {
  BarRange around = bars;
  for (const std::int32_t bar : bars_of(passage)) {
    if (bar < bars.first) around.first = bar;
    if (bar > bars.last) {
      around.last = bar;
      break;
    }
  }
  return around;
}

}  // namespace fingerturn
