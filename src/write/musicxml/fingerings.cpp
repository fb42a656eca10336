#include "write/musicxml/fingerings.hpp"

#include <fmt/core.h>

namespace fingerturn {

std::string fingerings(const Note& note, std::string_view attributes) {
  std::string fingers;
  for (const Finger finger : written_fingers(note)) {
    fingers += fmt::format("<fingering{}{}>{}</fingering>",
                           fingers.empty() ? "" : " substitution=\"yes\"", attributes, finger);
  }
  return fingers;
}

std::string alternatives(const Note& note) {
  std::string fingers;
  for (const Finger finger : note.alternatives) {
    fingers += fmt::format("<fingering alternate=\"yes\">{}</fingering>", finger);
  }
  return fingers;
}

}  // namespace fingerturn
