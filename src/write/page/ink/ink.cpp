#include "write/page/ink/ink.hpp"

#include "text/utf8.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace fingerturn {
namespace {

Box box_between(Point one, Point other) {
  return {std::min(one.x, other.x), std::min(one.y, other.y), std::max(one.x, other.x),
          std::max(one.y, other.y)};
}

Box grown(const Box& box, double by) {
  return {box.left - by, box.top - by, box.right + by, box.bottom + by};
}

void move_point(Point& point, double x, double y) {
  point.x += x;
  point.y += y;
}

struct Mover {
  double x;
  double y;

  void operator()(GlyphInk& shape) const { move_point(shape.at, x, y); }
  void operator()(TextInk& shape) const { move_point(shape.at, x, y); }
  void operator()(PlateInk& shape) const { shape.box = shape.box.moved(x, y); }
  template <typename Stroke>
  void operator()(Stroke& shape) const {
    move_point(shape.from, x, y);
    move_point(shape.to, x, y);
  }
};

}  // namespace

void Ink::move(double x, double y) {
  box = box.moved(x, y);
  std::visit(Mover{x, y}, shape);
}

Ink glyph_ink(InkKind kind, Glyph glyph, Point at, double scale) {
  const Box& outline = outline_of(glyph).box;
  const Box box{at.x + outline.left * scale, at.y + outline.top * scale,
                at.x + outline.right * scale, at.y + outline.bottom * scale};
  return {kind, InkStyle::plain, box, GlyphInk{glyph, at, scale}};
}

Ink line_ink(InkKind kind, Point from, Point to, double width) {
  Box box = box_between(from, to);
  const bool is_upright = from.x == to.x;
  (is_upright ? box.left : box.top) -= width / 2;
  (is_upright ? box.right : box.bottom) += width / 2;
  return {kind, InkStyle::plain, box, LineInk{from, to, width}};
}

Ink beam_ink(Point from, Point to, double thickness) {
  Box box = box_between(from, to);
  box.bottom += thickness;
  return {InkKind::beam, InkStyle::plain, box, BeamInk{from, to, thickness}};
}

double height_of(const BowInk& bow, double way) noexcept {
  return bow.from.y + way * (bow.to.y - bow.from.y) + bow.bend * 4 * way * (1 - way);
}

Ink bow_ink(InkKind kind, Point from, Point to, double bend) {
  const BowInk bow{from, to, bend, kind == InkKind::tie || kind == InkKind::slur};
  constexpr double kEighth = 8;
  const double fall = to.y - from.y;
  const double peak = bend == 0 ? 0.5 : std::clamp(0.5 + fall / (kEighth * bend), 0.0, 1.0);
  const Point middle{from.x + peak * (to.x - from.x), height_of(bow, peak)};
  return {kind, InkStyle::plain, both(box_between(from, to), box_between(middle, middle)), bow};
}

Ink swing_ink(Point from, Point to, InkStyle style) {
  return {InkKind::swing, style, box_between(from, to), SwingInk{from, to}};
}

Ink plate_ink(InkKind kind, const Box& box, double rounding, InkStyle style) {
  constexpr double kHalfStroke = 0.1;
  return {kind, style, grown(box, kHalfStroke), PlateInk{box, rounding}};
}

double text_width(std::string_view words, double size) {
  constexpr double kLetter = 0.6;
  return kLetter * size * static_cast<double>(count_code_points(words));
}

Ink text_ink(InkKind kind, TextInk text, InkStyle style) {
  constexpr double kAbove = 0.75;
  // Numbers do not reach below the line on which they stand.
  const double below = kind == InkKind::finger || kind == InkKind::bar_number ? 0.02 : 0.22;
  const double width = text_width(text.words, text.size);
  double left = text.at.x;
  if (text.anchor == Anchor::middle) left -= width / 2;
  if (text.anchor == Anchor::end) left -= width;
  const Box box{left, text.at.y - kAbove * text.size, left + width, text.at.y + below * text.size};
  return {kind, style, box, std::move(text)};
}

Box both(const Box& one, const Box& other) noexcept {
  return {std::min(one.left, other.left), std::min(one.top, other.top),
          std::max(one.right, other.right), std::max(one.bottom, other.bottom)};
}

Box box_of(const Inks& inks) noexcept {
  if (inks.empty()) return {};
  Box box = inks.front().box;
  for (const Ink& ink : inks) box = both(box, ink.box);
  return box;
}

void move_all(Inks& inks, double x, double y) {
  for (Ink& ink : inks) ink.move(x, y);
}

void append(Inks& inks, Inks more) {
  inks.insert(inks.end(), std::make_move_iterator(more.begin()),
              std::make_move_iterator(more.end()));
}

}  // namespace fingerturn
