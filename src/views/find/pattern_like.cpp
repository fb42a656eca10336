#include "fingerturn/find.hpp"
#include "views/find/measures.hpp"

#include <algorithm>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr std::string_view kOneHandWords =
    "a figure is of one hand in one passage; choose a hand with --hand, or bars with fingerturn "
    "excerpt";

/// The one line that plays something; null where there is none, or another.
const Line* only_line_of(const Score& figure) {
  const Line* only = nullptr;
  for (const Passage& passage : figure.passages) {
    for (const Line& line : passage.lines) {
      const auto is_struck = [](const Event& event) { return event.struck_count() > 0; };
      if (std::ranges::none_of(line.events, is_struck)) continue;
      if (only != nullptr) return nullptr;
      only = &line;
    }
  }
  return only;
}

std::vector<std::optional<Finger>> fingers_of(const StruckNotes& struck) {
  std::vector<std::optional<Finger>> fingers;
  for (const Note* note : struck) fingers.push_back(note->finger);
  return fingers;
}

WantedEvent like(const Event& event, const StruckNotes& struck, const Likeness& likeness) {
  WantedEvent wanted;
  wanted.shape = shape_of(struck);
  if (!likeness.any_fingers) wanted.fingers = fingers_of(struck);
  if (likeness.same_keys) wanted.midi = struck_keys(event);
  return wanted;
}

/// The letters and the way alone: a figure may come on another degree of its key.
WantedMove letters_between(const StruckNotes& before, const StruckNotes& now) {
  WantedMove move = move_between(before.front()->pitch, now.front()->pitch);
  move.semitones.reset();
  return move;
}

}  // namespace

FindPatternResult pattern_like(const Score& figure, const Likeness& likeness) {
  const Line* line = only_line_of(figure);
  if (line == nullptr) return {std::nullopt, std::string(kOneHandWords)};
  std::vector<const Event*> events;
  WantedRun run;
  for (const Event& event : line->events) {
    if (event.struck_count() == 0) continue;
    const StruckNotes struck = struck_notes(event);
    WantedEvent& wanted = run.events.emplace_back(like(event, struck, likeness));
    if (!events.empty()) wanted.move = letters_between(struck_notes(*events.back()), struck);
    if (events.size() > 1) wanted.pace = pace_of(*events[events.size() - 2], *events.back(), event);
    events.push_back(&event);
  }
  if (run.events.size() > kMostWantedEvents) {
    return {std::nullopt, fmt::format("expected a figure of {} events at most, found {}",
                                      kMostWantedEvents, run.events.size())};
  }
  return {FindPattern{line->hand, {std::move(run)}}, {}};
}

}  // namespace fingerturn
