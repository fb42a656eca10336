#include "write/musicxml/signs.hpp"

#include "fingerturn/report.hpp"
#include "text/wrap.hpp"

#include <array>
#include <optional>
#include <string_view>

namespace fingerturn {
namespace {

constexpr int kLegendColumns = 76;

constexpr std::string_view kLeft = "\xE2\x86\x90";         // arrow to the left
constexpr std::string_view kRight = "\xE2\x86\x92";        // arrow to the right
constexpr std::string_view kDoubleLeft = "\xE2\x87\x90";   // the same with two strokes
constexpr std::string_view kDoubleRight = "\xE2\x87\x92";  // the same with two strokes

std::string arrow_sign(Rotation rotation, std::optional<Direction> play) {
  const bool left = play == Direction::left;
  const std::string arrow(!play ? "" : left ? kLeft : kRight);
  switch (rotation) {
    case Rotation::preparatory:
      if (!play) return "|?";
      return left ? arrow + '|' : '|' + arrow;
    case Rotation::single_rotation:
      return play ? arrow : "?";
    case Rotation::double_rotation:
      return play ? std::string(left ? kDoubleLeft : kDoubleRight) : "?";
    case Rotation::level:
      return "=";
    case Rotation::undetermined:
      break;
  }
  return arrow + '?';
}

std::string word_sign(Rotation rotation, std::optional<Direction> play) {
  std::string direction(play ? name_of(*play) : "?");
  switch (rotation) {
    case Rotation::preparatory:
      return "prep " + direction;
    case Rotation::single_rotation:
      return direction;
    case Rotation::double_rotation:
      return "double " + direction;
    case Rotation::level:
      return "level";
    case Rotation::undetermined:
      break;
  }
  return play ? direction + " ?" : "?";
}

/// A kind as the legend shows it.
struct LegendLine {
  std::string_view signs;
  std::string_view words;
  std::string_view meaning;
};

constexpr std::array<LegendLine, 5> kKinds{{
    {"\xE2\x86\x90| |\xE2\x86\x92", "prep left, prep right",
     "preparatory: the first of a gesture, with a swing of its own to the other side before it"},
    {"\xE2\x86\x90 \xE2\x86\x92", "left, right",
     "single: the side changes, the note before has prepared it"},
    {"\xE2\x87\x90 \xE2\x87\x92", "double left, double right",
     "double: the side stays, the forearm swings back first"},
    {"=", "level", "level: both sides of the hand go down together, no turn"},
    {"?", "?", "undetermined: a finger is missing"},
}};
constexpr LegendLine kOpenSide{"|?", "prep ?", "preparatory, the side is left open"};
constexpr LegendLine kOpenKind{"\xE2\x86\x90? \xE2\x86\x92?", "left ?, right ?",
                               "the way it turns is known, its kind is not"};

/// Whether there is an event of a kind with nothing left open about it or, where nothing is known,
/// with nothing known.
bool has_plain(const Used& used, Rotation rotation) {
  if (rotation == Rotation::preparatory) return used.has(rotation, true);
  if (rotation == Rotation::undetermined) return used.has(rotation, false);
  return used.has(rotation);
}

std::string legend_line(const LegendLine& line, bool words) {
  const std::string_view signs = words ? line.words : line.signs;
  return wrapped("", std::string(signs) + ' ' + std::string(line.meaning), kLegendColumns);
}

}  // namespace

std::string score_sign(const EventAnalysis& event, Hand hand, bool words) {
  const std::optional<Direction> play = direction_of(hand, event.side);
  return words ? word_sign(event.rotation, play) : arrow_sign(event.rotation, play);
}

std::string score_legend(const Used& used, const SignPlaces& places, bool words) {
  std::string text =
      wrapped("", "Under the notes: how the forearm turns to play each, as the player sees it.",
              kLegendColumns);
  for (std::size_t i = 0; i < kKinds.size(); ++i) {
    if (has_plain(used, kRotations.at(i))) text += legend_line(kKinds.at(i), words);
  }
  if (used.has(Rotation::preparatory, false)) text += legend_line(kOpenSide, words);
  if (used.has(Rotation::undetermined, true)) text += legend_line(kOpenKind, words);
  if (places.rolled) {
    text +=
        wrapped("", "Signs with strokes between them are those of a rolled chord, in its order.",
                kLegendColumns);
  }
  if (places.visits) {
    text += wrapped("", "A sign one line lower belongs to the hand of the other staff.",
                    kLegendColumns);
  }
  return text + wrapped("", caution(), kLegendColumns);
}

}  // namespace fingerturn
