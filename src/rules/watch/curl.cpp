#include "rules/watch/curl.hpp"

#include "rules/arm/depth.hpp"

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// "3 on G4 and 5 on B4": the fingers on white keys.
std::string white_words(const Event& event) {
  std::string words;
  for (const Note& note : event.notes) {
    const bool black = key_colour(midi_number(note.pitch)) == KeyColour::black;
    if (note.held || !note.finger || black) continue;
    words += fmt::format("{}{} on {}", words.empty() ? "" : " and ", *note.finger,
                         to_string(note.pitch));
  }
  return words;
}

}  // namespace

void find_curl(const Line& line, const Strike& strike, std::size_t index,
               std::vector<Finding>& findings) {
  const Event& event = line.events[strike.event];
  if (!has_no_common_depth(event)) return;
  findings.push_back({kCurlRule.id, WatchLevel::info, strike.event, index,
                      fmt::format("The thumb is on a black key and {}: the hand goes in, or the "
                                  "fingers on white keys curl.",
                                  white_words(event))});
}

}  // namespace fingerturn
