#include "rules/watch/chord_fingers.hpp"

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// Calls `look` with each two neighbouring struck notes that both have a finger, lower key first.
template <typename Look>
void for_each_neighbours(const Event& event, const Look& look) {
  const Note* lower = nullptr;
  for (const Note& note : event.notes) {
    if (note.held || !note.finger) continue;
    if (lower != nullptr) look(*lower, note);
    lower = &note;
  }
}

int semitones_between(const Note& lower, const Note& upper) {
  return midi_number(upper.pitch) - midi_number(lower.pitch);
}

std::string finger_name(Finger finger) {
  if (finger == kThumb) return "the thumb";
  return finger == kFifth ? "the fifth finger" : fmt::format("finger {}", finger);
}

}  // namespace

void find_one_finger_twice(const Line& line, const Strike& strike, std::size_t index,
                           std::vector<Finding>& findings) {
  constexpr int kNeighbours = 2;  // semitones
  for_each_neighbours(line.events[strike.event], [&](const Note& lower, const Note& upper) {
    if (lower.finger != upper.finger) return;
    const bool thumb_on_neighbours =
        lower.finger == kThumb && semitones_between(lower, upper) <= kNeighbours;
    const std::string keys =
        fmt::format("{} and {}", to_string(lower.pitch), to_string(upper.pitch));
    findings.push_back(
        {kOneFingerTwiceRule.id, thumb_on_neighbours ? WatchLevel::info : WatchLevel::caution,
         strike.event, index,
         thumb_on_neighbours
             ? fmt::format("The thumb takes two neighbouring keys, {}.", keys)
             : fmt::format("One finger, {}, stands on two notes struck together, {}.",
                           finger_name(*lower.finger), keys)});
  });
}

void find_crossed_in_chord(const Line& line, const Strike& strike, std::size_t index,
                           std::vector<Finding>& findings) {
  for_each_neighbours(line.events[strike.event], [&](const Note& lower, const Note& upper) {
    const bool crossed =
        line.hand == Hand::right ? *lower.finger > *upper.finger : *lower.finger < *upper.finger;
    if (!crossed) return;
    findings.push_back(
        {kCrossedInChordRule.id, WatchLevel::caution, strike.event, index,
         fmt::format("The fingers lie across one another: {} on {} and {} on {}, in the {} hand.",
                     *lower.finger, to_string(lower.pitch), *upper.finger, to_string(upper.pitch),
                     to_string(line.hand))});
  });
}

}  // namespace fingerturn
