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

HandPicture::HandPicture(const PageLayout& layout, const Line& line, std::size_t number)
    : layout_(&layout), line_(&line), number_(number) {
  double place = 0;
  for (std::size_t i = 0; i < layout.columns.size(); ++i) {
    const auto& shown = layout.columns[i].events[number];
    if (!shown || shown->entry == nullptr) continue;
    place += shown->entry->carry.value_or(0);
    struck_.push_back({static_cast<std::uint32_t>(i), place});
  }
  bar_lines_ = bar_lines_of(layout, line, number);
  set_lanes();
}

void HandPicture::set_lanes() {
  bool first = true;
  for (const Struck& struck : struck_) {
    const EventAnalysis& entry = *shown_at(struck.column).entry;
    lanes_.crossings |= entry.crossing != Crossing::none;
    lanes_.depths |= entry.depth.value_or(0) > 0;
    if (!entry.carry) continue;
    lanes_.lowest_place = first ? struck.place : std::min(lanes_.lowest_place, struck.place);
    lanes_.highest_place = first ? struck.place : std::max(lanes_.highest_place, struck.place);
    first = false;
  }
}

Mark HandPicture::mark(std::size_t number) const {
  const ShownEvent& shown = shown_at(struck_[number].column);
  const EventAnalysis& entry = *shown.entry;
  Mark mark;
  mark.x = x_of(number);
  mark.fingers = fingers_of(shown, *line_);
  mark.rotation = entry.rotation;
  if (entry.side) mark.play = direction_of(hand(), *entry.side);
  mark.prepare = entry.prepare;
  mark.crossing = entry.crossing;
  mark.gesture = entry.gesture;
  mark.depth = entry.depth;
  if (entry.carry) mark.place = struck_[number].place;
  return mark;
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
