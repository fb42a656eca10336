#include "fingering/line_fingering.hpp"

#include "fingering/paths.hpp"
#include "hand/misplaced_finger.hpp"

#include <algorithm>
#include <utility>

namespace fingerturn {
namespace {

constexpr double kDifficultyUnit = 1000.0 * kOne;

/// Where the notes of each event begin in a row of all notes of the line.
std::vector<std::size_t> places_of_notes(const Line& line) {
  std::vector<std::size_t> places;
  places.reserve(line.events.size() + 1);
  places.push_back(0);
  for (const Event& event : line.events) places.push_back(places.back() + event.notes.size());
  return places;
}

/// The finger that a choice has on a key; 0 where the key is none of the grip's.
Finger finger_on(const Grip& grip, const Choice& choice, std::int32_t where) noexcept {
  for (std::size_t i = 0; i < grip.count; ++i) {
    if (grip.keys[i].across == where) return choice.strikes[i];
  }
  return 0;
}

LineFingering fingering_of(const Line& line, const std::vector<std::size_t>& places,
                           const FingerTask& task, const Path& path) {
  LineFingering fingering;
  fingering.added.resize(places.back());
  fingering.difficulty = static_cast<double>(path.difficulty) / kDifficultyUnit;
  for (std::size_t at = 0; at < task.grips.size(); ++at) {
    const Grip& grip = task.grips[at];
    const Choice& choice = task.choices.of(at)[path.choices[at]];
    const std::vector<Note>& notes = line.events[grip.event].notes;
    for (std::size_t i = 0; i < notes.size(); ++i) {
      if (notes[i].held || notes[i].finger) continue;
      const std::int32_t where = across(line.hand, midi_number(notes[i].pitch));
      fingering.added[places[grip.event] + i] = finger_on(grip, choice, where);
      ++fingering.suggested;
    }
  }
  return fingering;
}

/// The line without the fingers that are probably meant for another note; none where all stay.
std::optional<Line> without_misplaced_fingers(const Line& line,
                                              std::optional<int> reach_semitones) {
  std::optional<Line> bared;
  for (std::size_t at = 0; at < line.events.size(); ++at) {
    const auto misplaced = misplaced_finger(line.hand, line.events[at], reach_semitones);
    if (!misplaced || line.events[at].notes[misplaced->note].suggested) continue;
    if (!bared) bared = line;
    Note& note = bared->events[at].notes[misplaced->note];
    note.finger.reset();
    note.changes_to.clear();
  }
  return bared;
}

}  // namespace

std::vector<LineFingering> finger_line(const Line& written, const Weights& weights,
                                       const LineOptions& options) {
  // Paths may differ in nothing but the finger of a key that sounds on, which no note shows.
  constexpr std::size_t kTriesForEach = 4;
  const std::optional<Line> bared = without_misplaced_fingers(written, options.reach_semitones);
  const Line& line = bared ? *bared : written;
  const SpanTable spans(options.reach_semitones);
  const std::vector<Grip> grips = grips_of(line, spans);
  const Choices choices(grips, spans);
  const FingerTask task{grips, choices, spans, weights};
  const LineCosts costs(task);
  EasiestPaths paths(costs);
  const std::vector<std::size_t> places = places_of_notes(line);
  std::vector<LineFingering> found;
  if (options.most <= 1) {
    found.push_back(fingering_of(line, places, task, paths.first()));
    return found;
  }
  const std::size_t tries = kTriesForEach * options.most;
  for (std::size_t i = 0; i < tries && found.size() < options.most; ++i) {
    const Path path = paths.next(tries);
    if (i > 0 && path.choices.empty()) break;
    LineFingering fingering = fingering_of(line, places, task, path);
    const bool is_new = std::none_of(found.begin(), found.end(), [&](const LineFingering& other) {
      return other.added == fingering.added;
    });
    if (is_new) found.push_back(std::move(fingering));
  }
  return found;
}

}  // namespace fingerturn
