#include "write/page/svg_frame.hpp"

#include "write/page/svg_hand.hpp"

#include <algorithm>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr double kTop = lanes::kRight - 10;

void add_stroke(std::string& out, double x, double bottom, bool thick) {
  out += fmt::format(R"(<path class="bar{}" d="M)", thick ? " thick" : "");
  add_number(out, x);
  out += ' ';
  add_number(out, kTop);
  out += 'V';
  add_number(out, bottom);
  out += R"("/>)";
}

void add_dots(std::string& out, double x) {
  for (const double y : {lanes::kMiddle - 6, lanes::kMiddle + 6}) {
    out += R"(<circle class="dot" cx=")";
    add_number(out, x);
    out += R"(" cy=")";
    add_number(out, y);
    out += R"(" r="1.8"/>)";
  }
}

BarLineStyle style_at(const HandPicture& picture, double x) {
  const auto found =
      std::lower_bound(picture.bar_lines().begin(), picture.bar_lines().end(), x,
                       [](const StyledBarLine& line, double place) { return line.x < place; });
  return found != picture.bar_lines().end() && found->x == x ? found->style : BarLineStyle::single;
}

void add_end(std::string& out, BarLineStyle style, double x, double bottom) {
  switch (style) {
    case BarLineStyle::single:
    case BarLineStyle::repeat_start:
      return add_stroke(out, x - 0.5, bottom, false);
    case BarLineStyle::double_bar:
      add_stroke(out, x - 3.5, bottom, false);
      return add_stroke(out, x - 0.5, bottom, false);
    case BarLineStyle::repeat_end:
    case BarLineStyle::repeat_both:
      add_dots(out, x - 8);
      add_stroke(out, x - 4.5, bottom, false);
      return add_stroke(out, x - 1.5, bottom, true);
  }
}

void add_begin(std::string& out, BarLineStyle style, double x, double bottom) {
  if (style != BarLineStyle::repeat_start && style != BarLineStyle::repeat_both) return;
  add_stroke(out, x + 1.5, bottom, true);
  add_stroke(out, x + 4.5, bottom, false);
  add_dots(out, x + 8);
}

void add_name(std::string& out, double x, double middle, std::string_view words) {
  constexpr double kBelowMiddle = 4;
  out += R"(<text class="name" x=")";
  add_number(out, x);
  out += R"(" y=")";
  add_number(out, middle + kBelowMiddle);
  out += fmt::format(R"(">{}</text>)", words);
}

}  // namespace

void add_bar_lines(std::string& out, const HandPicture& picture, const PageLayout& layout,
                   const Piece& piece) {
  const double bottom = lanes::height(picture.lanes());
  const double begin = layout.begin_of(piece);
  const double end = layout.end_of(piece);
  if (!piece.goes_on) add_begin(out, style_at(picture, begin), begin, bottom);
  if (piece.ends_bar) add_end(out, style_at(picture, end), end, bottom);
}

void add_lane_names(std::string& out, const HandPicture& picture, double x) {
  const Lanes& found = picture.lanes();
  add_name(out, x, lanes::kRight, "right");
  add_name(out, x, lanes::kLeft, "left");
  if (found.crossings) {
    add_name(out, x, lanes::crossing_top(found) + lanes::kCrossingHeight / 2, "crossing");
  }
  if (found.places()) {
    add_name(out, x, lanes::place_top(found) + lanes::place_height(found) / 2, "hand");
  }
  if (found.depths) {
    add_name(out, x, lanes::depth_top(found) + lanes::kDepthHeight / 2, "depth");
  }
}

}  // namespace fingerturn
