#include "rules/watch/chord_fingers.hpp"

#include "hand/misplaced_finger.hpp"
#include "hand/spans.hpp"

#include <string>

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

/// The struck notes, lowest first, if all have fingers.
std::vector<const Note*> fingered_notes(const Event& event) {
  std::vector<const Note*> notes;
  for (const Note& note : event.notes) {
    if (note.held) continue;
    if (!note.finger) return {};
    notes.push_back(&note);
  }
  return notes;
}

bool rises(const std::vector<const Note*>& notes, bool upward) {
  for (std::size_t i = 1; i < notes.size(); ++i) {
    const bool up = *notes[i]->finger > *notes[i - 1]->finger;
    if (notes[i]->finger == notes[i - 1]->finger || up != upward) return false;
  }
  return true;
}

/// Whether each two of the notes are within reach when the fingers are exchanged end for end.
bool fit_reversed(Hand hand, const std::vector<const Note*>& notes,
                  std::optional<int> reach_semitones) {
  const std::size_t last = notes.size() - 1;
  for (std::size_t low = 0; low < last; ++low) {
    for (std::size_t high = low + 1; high <= last; ++high) {
      const Finger lower = *notes[last - low]->finger;
      const Finger upper = *notes[last - high]->finger;
      const int span = span_between(hand, lower, midi_number(notes[low]->pitch), upper,
                                    midi_number(notes[high]->pitch));
      const FingerSpans spans = spans_of(lower, upper, reach_semitones);
      if (span < spans.least_practical || span > spans.widest_practical) return false;
    }
  }
  return true;
}

}  // namespace

bool find_reversed_in_chord(const Line& line, const Strike& strike, std::size_t index,
                            std::optional<int> reach_semitones, std::vector<Finding>& findings) {
  const std::vector<const Note*> notes = fingered_notes(line.events[strike.event]);
  const bool reversed = notes.size() > 1 && rises(notes, line.hand == Hand::left) &&
                        fit_reversed(line.hand, notes, reach_semitones);
  if (!reversed) return false;
  std::string meant;
  for (std::size_t i = 0; i < notes.size(); ++i) {
    meant += fmt::format("{}{} on {}", i == 0 ? "" : ", ", *notes[notes.size() - 1 - i]->finger,
                         to_string(notes[i]->pitch));
  }
  findings.push_back(
      {kReversedInChordRule.id, WatchLevel::info, strike.event, index,
       fmt::format("The fingers stand the other way round; most likely {} is meant.", meant)});
  return true;
}

bool find_misplaced_finger(const Line& line, const Strike& strike, std::size_t index,
                           std::optional<int> reach_semitones, std::vector<Finding>& findings) {
  const Event& event = line.events[strike.event];
  const auto misplaced = misplaced_finger(line.hand, event, reach_semitones);
  if (!misplaced) return false;
  const Note& note = event.notes[misplaced->note];
  findings.push_back(
      {kMisplacedFingerRule.id, WatchLevel::info, strike.event, index,
       fmt::format(
           "With {} on {} no hand takes the rest of the chord; probably it is meant for {}{}.",
           misplaced->finger, to_string(note.pitch), to_string(event.notes[misplaced->meant].pitch),
           note.suggested ? ", and the suggestion goes on without it" : "")});
  return !note.suggested;
}

void find_one_finger_twice(const Line& line, const Strike& strike, std::size_t index,
                           std::vector<Finding>& findings) {
  for_each_neighbours(line.events[strike.event], [&](const Note& lower, const Note& upper) {
    if (lower.finger != upper.finger) return;
    const bool thumb_on_neighbours = takes_both(*lower.finger, semitones_between(lower, upper));
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
  std::string crossed;
  for_each_neighbours(line.events[strike.event], [&](const Note& lower, const Note& upper) {
    const bool crosses =
        line.hand == Hand::right ? *lower.finger > *upper.finger : *lower.finger < *upper.finger;
    if (!crosses) return;
    crossed += fmt::format("{}{} on {} and {} on {}", crossed.empty() ? "" : ", ", *lower.finger,
                           to_string(lower.pitch), *upper.finger, to_string(upper.pitch));
  });
  if (crossed.empty()) return;
  findings.push_back({kCrossedInChordRule.id, WatchLevel::caution, strike.event, index,
                      fmt::format("The fingers lie across one another: {}, in the {} hand.",
                                  crossed, to_string(line.hand))});
}

}  // namespace fingerturn
