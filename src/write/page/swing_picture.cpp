#include "write/page/swing_picture.hpp"

#include "write/shared/note_words.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

/// Many changes of finger on one key would not fit a mark.
std::string shortened(const std::string& words) {
  constexpr std::size_t kLongest = 4;
  return words.size() <= kLongest ? words : words.substr(0, 2) + "..";
}

std::vector<std::string> fingers_of(const ShownEvent& shown, const Line& line) {
  std::vector<std::string> fingers;
  for (const Note& note : shown.event->notes) {
    if (note.held) continue;
    fingers.push_back(
        shortened(finger_words(fingers_on_key(line, shown.place, note), note.suggested)));
  }
  return fingers;
}

Mark mark_of(const ShownEvent& shown, const Line& line, double x, double& place) {
  const EventAnalysis& entry = *shown.entry;
  Mark mark;
  mark.x = x;
  mark.fingers = fingers_of(shown, line);
  mark.rotation = entry.rotation;
  if (entry.side) mark.play = direction_of(line.hand, *entry.side);
  mark.prepare = entry.prepare;
  mark.crossing = entry.crossing;
  mark.gesture = entry.gesture;
  mark.depth = entry.depth;
  place += entry.carry.value_or(0);
  if (entry.carry) mark.place = place;
  return mark;
}

Lanes lanes_of(const std::vector<Mark>& marks) {
  Lanes found;
  bool first = true;
  for (const Mark& mark : marks) {
    found.crossings |= mark.crossing != Crossing::none;
    found.depths |= mark.depth.value_or(0) > 0;
    if (!mark.place) continue;
    found.lowest_place = first ? *mark.place : std::min(found.lowest_place, *mark.place);
    found.highest_place = first ? *mark.place : std::max(found.highest_place, *mark.place);
    first = false;
  }
  return found;
}

/// Where the bar lines stand that are more than plain: at the column of the event they precede, or
/// at the end.
std::vector<StyledBarLine> bar_lines_of(const PageLayout& layout, const Line& line,
                                        std::size_t number) {
  std::vector<StyledBarLine> found;
  auto next = line.bar_lines.begin();
  const auto add_up_to = [&](std::size_t event, int x) {
    for (; next != line.bar_lines.end() && next->before_event <= event; ++next) {
      if (next->before_event < event || next->style == BarLineStyle::single) continue;
      found.push_back({static_cast<double>(x), next->style});
    }
  };
  std::optional<std::size_t> last;
  int end = 0;
  for (std::size_t i = 0; i < layout.columns.size(); ++i) {
    const auto& shown = layout.columns[i].events[number];
    if (!shown) continue;
    add_up_to(shown->place, layout.edges[i]);
    last = shown->place;
    end = layout.edges.back();
  }
  if (last) add_up_to(*last + 1, end);
  return found;
}

}  // namespace

HandPicture hand_picture(const PageLayout& layout, const Line& line, std::size_t number) {
  HandPicture picture;
  picture.hand = line.hand;
  double place = 0;
  for (std::size_t i = 0; i < layout.columns.size(); ++i) {
    const auto& event = layout.columns[i].events[number];
    if (!event || event->entry == nullptr) continue;
    picture.marks.push_back(mark_of(*event, line, layout.middle_of(i), place));
  }
  picture.bar_lines = bar_lines_of(layout, line, number);
  picture.lanes = lanes_of(picture.marks);
  return picture;
}

namespace lanes {

double crossing_top(const Lanes& /*lanes*/) noexcept { return kBandEnd; }

double place_top(const Lanes& lanes) noexcept {
  return kBandEnd + (lanes.crossings ? kCrossingHeight : 0) + (lanes.places() ? kGap : 0);
}

double place_height(const Lanes& lanes) noexcept {
  constexpr double kKey = 5;
  constexpr double kLowest = 14;
  constexpr double kHighest = 42;
  if (!lanes.places()) return 0;
  return std::clamp(kKey * (lanes.highest_place - lanes.lowest_place), kLowest, kHighest);
}

double depth_top(const Lanes& lanes) noexcept {
  return place_top(lanes) + place_height(lanes) + (lanes.depths ? kGap : 0);
}

double height(const Lanes& lanes) noexcept {
  return depth_top(lanes) + (lanes.depths ? kDepthHeight : 0) + kGap;
}

}  // namespace lanes

}  // namespace fingerturn
