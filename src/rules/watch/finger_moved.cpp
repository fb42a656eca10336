#include "rules/watch/finger_moved.hpp"

#include <fmt/core.h>

namespace fingerturn {
namespace {

std::string key_words(const Line& line, const Strike& strike) {
  for (const Note& note : line.events[strike.event].notes) {
    if (!note.held) return to_string(note.pitch);
  }
  return {};
}

}  // namespace

void find_finger_moved(const Line& line, const Strike& from, const Strike& to,
                       const EventAnalysis& entry, std::vector<Finding>& findings) {
  const Finger finger = to.arrival.lowest;
  const bool same = to.arrival.known() && from.departure.lowest == finger;
  if (!same || from.key == to.key) return;
  findings.push_back({kFingerMovedRule.id, WatchLevel::info, to.event, entry.index,
                      fmt::format("{} plays {} and then {}: it is carried from key to key.",
                                  finger == kThumb ? "The thumb" : fmt::format("Finger {}", finger),
                                  key_words(line, from), key_words(line, to))});
}

}  // namespace fingerturn
