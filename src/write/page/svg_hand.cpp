#include "write/page/svg_hand.hpp"

#include "text/escape.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include <fmt/format.h>

namespace fingerturn {
namespace {

/// How far the hand of a drawing reaches beyond the middle of a mark.
constexpr double kRadius = 10;
constexpr double kRing = 3.5;
constexpr double kFingerLetter = 8;
constexpr double kGestureReach = 19;
constexpr double kStepReach = 9;

double height_of(std::optional<Direction> play) {
  if (!play) return lanes::kMiddle;
  return *play == Direction::right ? lanes::kRight : lanes::kLeft;
}

/// Adds the numbers with a letter of a path before each but the first of a pair, " 1 2".
void add_point(std::string& out, char letter, double x, double y) {
  out += letter;
  add_number(out, x);
  out += ' ';
  add_number(out, y);
}

/// A swing: it leaves and arrives level, so that it turns without a corner.
void add_swing(std::string& path, double from_x, double from_y, double to_x, double to_y) {
  const double middle = (from_x + to_x) / 2;
  add_point(path, 'M', from_x, from_y);
  add_point(path, 'C', middle, from_y);
  add_point(path, ' ', middle, to_y);
  add_point(path, ' ', to_x, to_y);
}

void add_path(std::string& out, std::string_view name, const std::string& path) {
  if (!path.empty()) out += fmt::format(R"(<path class="{}" d="{}"/>)", name, path);
}

struct Rectangle {
  double x;
  double y;
  double width;
  double height;
};

void add_rectangle(std::string& out, std::string_view name, const Rectangle& rectangle,
                   double rounding) {
  out += fmt::format(R"(<rect class="{}" x=")", name);
  add_number(out, rectangle.x);
  out += R"(" y=")";
  add_number(out, rectangle.y);
  out += R"(" width=")";
  add_number(out, rectangle.width);
  out += R"(" height=")";
  add_number(out, rectangle.height);
  out += R"(" rx=")";
  add_number(out, rounding);
  out += R"("/>)";
}

void add_words(std::string& out, std::string_view name, double x, double y,
               std::string_view words) {
  out += fmt::format(R"(<text class="{}" x=")", name);
  add_number(out, x);
  out += R"(" y=")";
  add_number(out, y);
  out += fmt::format(R"(">{}</text>)", escaped_markup(words));
}

std::string fingers_beside(const Mark& mark) {
  std::string words;
  for (const std::string& finger : mark.fingers) words += (words.empty() ? "" : " ") + finger;
  return words;
}

/// A mark of one height around (x, y), as wide as its words ask for; rounded or with corners.
void add_plate(std::string& out, std::string_view name, const Mark& mark, double reach,
               bool round) {
  constexpr double kCorner = 2;
  const auto letters = static_cast<double>(fingers_beside(mark).size());
  const double half = std::max(kRadius, kFingerLetter * letters / 2 + 4) + reach - kRadius;
  add_rectangle(out, name, {mark.x - half, height_of(mark.play) - reach, 2 * half, 2 * reach},
                round ? reach : kCorner);
}

void add_fingers(std::string& out, std::string_view name, const Mark& mark) {
  constexpr double kBelowMiddle = 4.5;
  add_words(out, name, mark.x, height_of(mark.play) + kBelowMiddle, fingers_beside(mark));
}

/// A chord played level reaches over both sides, its fingers one above the other as the keys lie.
void add_level(std::string& out, const Mark& mark) {
  constexpr double kFingerLine = 12;
  const double top = lanes::kRight - kRadius;
  const double height = lanes::kLeft - lanes::kRight + 2 * kRadius;
  std::size_t letters = 1;
  for (const std::string& finger : mark.fingers) letters = std::max(letters, finger.size());
  const double half = std::max(kRadius, kFingerLetter * static_cast<double>(letters) / 2 + 4);
  add_rectangle(out, "level", {mark.x - half, top, 2 * half, height}, kRadius);
  const auto count = static_cast<double>(mark.fingers.size());
  const double step = std::min(kFingerLine, (height - kFingerLine) / std::max(1.0, count - 1));
  double y = lanes::kMiddle + step * (count - 1) / 2 + 4.5;
  for (const std::string& finger : mark.fingers) {
    add_words(out, "f", mark.x, y, finger);
    y -= step;
  }
}

void add_mark(std::string& out, const Mark& mark) {
  switch (mark.rotation) {
    case Rotation::preparatory:
      add_plate(out, "prep", mark, kRadius, false);
      return add_fingers(out, "f", mark);
    case Rotation::single_rotation:
      add_plate(out, "single", mark, kRadius, true);
      return add_fingers(out, "f", mark);
    case Rotation::double_rotation:
      add_plate(out, "ring", mark, kRadius + kRing, true);
      add_plate(out, "double", mark, kRadius, true);
      return add_fingers(out, "f on", mark);
    case Rotation::level:
      return add_level(out, mark);
    case Rotation::undetermined:
      add_plate(out, "open", mark, kRadius, true);
      return add_fingers(out, "f", mark);
  }
}

/// The strokes of the swings into the marks.
struct Swings {
  std::string play;
  std::string prepare;
  std::string turns;  ///< where the forearm turns back
};

void add_turn(Swings& swings, const Mark& mark, double turn_x) {
  const double turn_y = height_of(mark.prepare);
  add_swing(swings.play, turn_x, turn_y, mark.x, height_of(mark.play));
  swings.turns += R"(<circle class="turn" cx=")";
  add_number(swings.turns, turn_x);
  swings.turns += R"(" cy=")";
  add_number(swings.turns, turn_y);
  swings.turns += R"(" r="3"/>)";
}

/// A first swing out of the middle, just before a mark that nothing leads to.
void add_opening(Swings& swings, const Mark& mark) {
  constexpr double kBegin = 22;
  constexpr double kTurn = 12;
  add_swing(swings.prepare, mark.x - kBegin, lanes::kMiddle, mark.x - kTurn,
            height_of(mark.prepare));
  add_turn(swings, mark, mark.x - kTurn);
}

void add_swings_into(Swings& swings, const Mark* before, const Mark& mark) {
  if (!mark.play) return;
  const bool goes_on = before != nullptr && before->gesture == mark.gesture && before->play;
  if (mark.prepare && !goes_on) return add_opening(swings, mark);
  if (!goes_on) return;
  const double before_y = height_of(before->play);
  if (mark.prepare) {
    const double turn_x = (before->x + mark.x) / 2;
    add_swing(swings.prepare, before->x, before_y, turn_x, height_of(mark.prepare));
    return add_turn(swings, mark, turn_x);
  }
  if (mark.rotation == Rotation::single_rotation) {
    add_swing(swings.play, before->x, before_y, mark.x, height_of(mark.play));
  }
}

void add_crossing(std::string& path, const Lanes& found, const Mark& before, const Mark& mark) {
  const double top = lanes::crossing_top(found) + 2;
  const double bottom = lanes::crossing_top(found) + lanes::kCrossingHeight;
  const auto arc = [&](double ends, double middle) {
    add_point(path, 'M', before.x, ends);
    add_point(path, 'C', before.x, middle);
    add_point(path, ' ', mark.x, middle);
    add_point(path, ' ', mark.x, ends);
  };
  if (mark.crossing != Crossing::finger_over_thumb) arc(top, bottom);
  if (mark.crossing != Crossing::thumb_under) arc(bottom - 2, top - 2);
}

/// A line that stays level at each mark and slopes between them; broken where nothing is known.
template <typename HeightOf>
std::string steps_of(const Mark* first, const Mark* last, const HeightOf& height) {
  std::string path;
  bool goes_on = false;
  for (const Mark* mark = first; mark != last; ++mark) {
    const std::optional<double> y = height(*mark);
    if (y) {
      add_point(path, goes_on ? 'L' : 'M', mark->x - kStepReach, *y);
      path += 'H';
      add_number(path, mark->x + kStepReach);
    }
    goes_on = y.has_value();
  }
  return path;
}

void add_lane(std::string& out, Window window, double top, double height) {
  add_rectangle(out, "lane", {window.begin, top, window.end - window.begin, height}, 0);
}

void add_places(std::string& out, const Lanes& found, Window window, const Mark* first,
                const Mark* last) {
  if (!found.places()) return;
  const double top = lanes::place_top(found);
  const double height = lanes::place_height(found);
  constexpr double kInset = 3;
  const double key = (height - 2 * kInset) / (found.highest_place - found.lowest_place);
  add_lane(out, window, top, height);
  add_path(out, "place", steps_of(first, last, [&](const Mark& mark) -> std::optional<double> {
             if (!mark.place) return std::nullopt;
             return top + height - kInset - key * (*mark.place - found.lowest_place);
           }));
}

void add_depths(std::string& out, const Lanes& found, Window window, const Mark* first,
                const Mark* last) {
  if (!found.depths) return;
  constexpr double kInset = 3;
  constexpr double kDeepest = 2;
  const double top = lanes::depth_top(found);
  const double unit = (lanes::kDepthHeight - 2 * kInset) / kDeepest;
  add_lane(out, window, top, lanes::kDepthHeight);
  add_path(out, "depth", steps_of(first, last, [&](const Mark& mark) -> std::optional<double> {
             if (!mark.depth) return std::nullopt;
             return top + lanes::kDepthHeight - kInset - unit * *mark.depth;
           }));
}

/// The gestures as bands, and the two sides as lines.
void add_bands(std::string& out, Window window, const Mark* first, const Mark* last) {
  for (const Mark* mark = first; mark != last;) {
    const Mark* end = mark;
    while (end != last && end->gesture == mark->gesture) ++end;
    const double begin = mark->x - kGestureReach;
    add_rectangle(out, "gesture",
                  {begin, lanes::kRight - kRadius, (end - 1)->x + kGestureReach - begin,
                   lanes::kLeft - lanes::kRight + 2 * kRadius},
                  8);
    mark = end;
  }
  std::string sides;
  for (const double y : {lanes::kRight, lanes::kLeft}) {
    add_point(sides, 'M', window.begin, y);
    sides += 'H';
    add_number(sides, window.end);
  }
  add_path(out, "side", sides);
}

}  // namespace

void draw_marks(std::string& out, const MarksInWindow& shown, const Lanes& lanes, Window window) {
  const Mark* const first = shown.marks.data();
  const Mark* const last = first + shown.marks.size();
  add_bands(out, window, first, last);
  Swings swings;
  std::string crossings;
  for (const Mark* mark = first; mark != last; ++mark) {
    const Mark* const before = mark == first ? nullptr : mark - 1;
    if (before == nullptr && shown.begin > 0) continue;
    add_swings_into(swings, before, *mark);
    if (before != nullptr && mark->crossing != Crossing::none) {
      add_crossing(crossings, lanes, *before, *mark);
    }
  }
  add_path(out, "prepare", swings.prepare);
  add_path(out, "play", swings.play);
  out += swings.turns;
  for (std::size_t i = shown.begin; i < shown.end; ++i) add_mark(out, shown.marks[i]);
  add_path(out, "crossing", crossings);
  add_places(out, lanes, window, first, last);
  add_depths(out, lanes, window, first, last);
}

void HandDrawer::add(std::string& out, Window window) {
  const std::size_t count = picture_.mark_count();
  while (next_ < count && picture_.x_of(next_) < window.begin) ++next_;
  std::size_t end = next_;
  while (end < count && picture_.x_of(end) < window.end) ++end;
  // One more on either side, for what leads into the window and out of it.
  const std::size_t first = next_ > 0 ? next_ - 1 : 0;
  std::vector<Mark> marks;
  for (std::size_t i = first; i < std::min(end + 1, count); ++i) marks.push_back(picture_.mark(i));
  draw_marks(out, {marks, next_ - first, end - first}, picture_.lanes(), window);
}

void add_number(std::string& out, double number) {
  const auto tenths = static_cast<std::int64_t>(std::llround(number * 10));
  if (tenths < 0) out += '-';
  const std::int64_t size = std::abs(tenths);
  const fmt::format_int whole(size / 10);
  out.append(whole.data(), whole.size());
  if (size % 10 != 0) {
    out += '.';
    out += static_cast<char>('0' + size % 10);
  }
}

}  // namespace fingerturn
