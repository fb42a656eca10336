#include "score/struck_notes.hpp"

namespace fingerturn {

std::vector<const Note*> struck_notes(const Event& event) {
  std::vector<const Note*> struck;
  for (const Note& note : event.notes) {
    if (!note.held) struck.push_back(&note);
  }
  return struck;
}

std::vector<int> struck_keys(const Event& event) {
  std::vector<int> keys;
  for (const Note* note : struck_notes(event)) keys.push_back(midi_number(note->pitch));
  return keys;
}

}  // namespace fingerturn
