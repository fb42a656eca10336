#include "write/text/trace.hpp"

#include <optional>
#include <string>

namespace fingerturn {
namespace {

struct TraceSigns {
  std::string_view turn = "\xE2\x97\x8B";     // circle
  std::string_view prepare = "\xE2\x94\x8A";  // dotted upright line
  std::string_view up = "\xE2\x95\xB1";       // slanted line
  std::string_view down = "\xE2\x95\xB2";     // slanted line
};
constexpr TraceSigns kDrawn{};
constexpr TraceSigns kAscii{"o", ":", "/", "\\"};

Track track_of(const std::optional<Direction>& direction) {
  if (!direction) return Track::middle;
  return *direction == Direction::right ? Track::right : Track::left;
}

/// The striking fingers, lowest note first: "2" or "1+3".
std::string striking_fingers(const ShownEvent& shown, const Line& line) {
  std::string words;
  for (const Note& note : shown.event->notes) {
    if (note.held) continue;
    const std::vector<Finger> fingers = fingers_on_key(line, shown.place, note);
    if (!words.empty()) words += '+';
    words += fingers.empty() ? '?' : static_cast<char>('0' + fingers.front());
  }
  return words;
}

/// The strokes between the sides: the swing that prepares in front of the one that plays.
std::string strokes(const EventAnalysis& entry, Hand hand, const TraceSigns& signs) {
  if (entry.rotation == Rotation::undetermined || !entry.side) return "  ?";
  const bool to_right = direction_of(hand, *entry.side) == Direction::right;
  std::string text(entry.prepare ? signs.prepare : " ");
  text += ' ';
  text += to_right ? signs.up : signs.down;
  return text;
}

Emphasis emphasis_on(Track track, const EventAnalysis& entry) {
  return track == Track::middle ? Emphasis::plain : emphasis_of(entry.rotation);
}

}  // namespace

std::string_view label_of(Track track) noexcept {
  switch (track) {
    case Track::right:
      return "to right";
    case Track::left:
      return "to left";
    case Track::middle:
      break;
  }
  return "swing";
}

Cell trace_cell(Track track, const ShownEvent& shown, const Line& line, bool ascii) {
  constexpr std::string_view kBeforeFinger = "   ";
  if (shown.entry == nullptr) return {};
  const EventAnalysis& entry = *shown.entry;
  const TraceSigns& signs = ascii ? kAscii : kDrawn;
  if (entry.rotation == Rotation::level) {
    return {std::string(kBeforeFinger) + '=', emphasis_on(track, entry)};
  }
  std::optional<Direction> play;
  if (entry.side) play = direction_of(line.hand, *entry.side);
  std::string text;
  if (track == Track::middle) text = strokes(entry, line.hand, signs);
  if (entry.prepare && track == track_of(entry.prepare)) text = ' ' + std::string(signs.turn);
  if (track == track_of(play)) {
    if (text.empty()) text = kBeforeFinger;
    text += striking_fingers(shown, line);
  }
  return {text, emphasis_on(track, entry)};
}

std::string_view trace_legend(bool ascii) noexcept {
  return ascii ? "up is to the right; / and \\ play, : prepares, o = the forearm turns back; = is "
                 "level; ? = not known; the numbers are the fingers"
               : "up is to the right; \xE2\x95\xB1 and \xE2\x95\xB2 play, \xE2\x94\x8A prepares, "
                 "\xE2\x97\x8B = the forearm turns back; = is level; ? = not known; the numbers "
                 "are the fingers";
}

}  // namespace fingerturn
