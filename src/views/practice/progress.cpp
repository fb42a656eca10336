#include "views/practice/progress.hpp"

#include "score/finger_text.hpp"

#include <algorithm>
#include <string>

#include <fmt/format.h>

namespace fingerturn {
namespace {

bool is_same_place(const RememberedPlace& one, const RememberedPlace& other) {
  return one.passage == other.passage && one.bars == other.bars && one.notes == other.notes;
}

/// The first step that is not slower than the tempo of last time, if that is not done, or else that
/// is faster; the number of steps where there is none. A person may have rounded the tempo.
std::size_t step_from(const std::vector<TempoStep>& ladder, const RememberedPlace& before) {
  constexpr double kRounding = 1;
  const double least = before.tempo_now + (before.done ? kRounding : -kRounding);
  const auto next = std::ranges::find_if(
      ladder, [&](const TempoStep& step) { return step.quarters_per_minute >= least; });
  return static_cast<std::size_t>(next - ladder.begin());
}

void go_on(PlannedPlace& place, const RememberedPlace& before) {
  if (place.ladder.empty() || before.tempo_now <= 0) return;
  const std::size_t step = step_from(place.ladder, before);
  place.progress->is_reached = before.done && step == place.ladder.size();
  place.now = std::min(step, place.ladder.size() - 1);
}

std::vector<std::string> changed_fingers(const RememberedPlace& before,
                                         const RememberedPlace& now) {
  std::vector<std::string> changed;
  for (std::size_t i = 0; i < now.fingers.size() && i < before.fingers.size(); ++i) {
    if (now.fingers[i] == before.fingers[i]) continue;
    changed.push_back(fmt::format("{}:{} (was {})", now.notes[i].substr(now.notes[i].find(' ') + 1),
                                  now.fingers[i], before.fingers[i]));
  }
  return changed;
}

}  // namespace

RememberedPlace remembered_place(const Passage& passage, BarRange bars) {
  RememberedPlace place;
  place.bars = bars;
  for (const Line& line : passage.lines) {
    const std::string hand = line.hand == Hand::right ? "R " : "L ";
    for (const Event& event : line.events) {
      if (!bars.contains(event.bar)) continue;
      for (const Note& note : event.notes) {
        if (note.held) continue;
        place.notes.push_back(hand + to_string(note.pitch));
        const std::string fingers = finger_text(written_fingers(note));
        place.fingers.push_back(fingers.empty() ? "?" : fingers);
      }
    }
  }
  return place;
}

void add_progress(PracticePlan& plan, const AnalysedScore& analysed, const PracticeMemory& memory) {
  std::vector<bool> known(memory.places.size(), false);
  for (PlannedPlace& place : plan.places) {
    RememberedPlace now =
        remembered_place(analysed.written().passages[place.passage], place.stretch.bars);
    now.passage = place.passage;
    place.progress.emplace();
    const auto before = std::ranges::find_if(
        memory.places, [&](const RememberedPlace& each) { return is_same_place(each, now); });
    if (before == memory.places.end()) continue;
    known[static_cast<std::size_t>(before - memory.places.begin())] = true;
    place.progress = PlaceProgress{false, before->done, false, changed_fingers(*before, now)};
    go_on(place, *before);
  }
  for (std::size_t i = 0; i < known.size(); ++i) {
    const bool left_out = std::ranges::any_of(plan.left_out, [&](const PlannedPlace& place) {
      return place.passage == memory.places[i].passage &&
             place.stretch.bars == memory.places[i].bars;
    });
    if (!known[i] && !left_out) plan.settled.push_back(to_string(memory.places[i].bars));
  }
}

}  // namespace fingerturn
