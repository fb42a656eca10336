#include "write/page/legend_line.hpp"

#include "write/page/ribbon/ribbon.hpp"
#include "write/shared/used.hpp"

#include <string>
#include <utility>

namespace fingerturn {
namespace {

constexpr double kMiddle = 1.5;
constexpr double kSide = 3;

Box around(double radius) {
  return {kMiddle - radius, kMiddle - radius, kMiddle + radius, kMiddle + radius};
}

LegendDrawing drawing(Inks inks, double width, std::string_view words) {
  return {std::move(inks), width, kSide, words};
}

Inks plate(InkStyle style, double radius, double rounding) {
  return {plate_ink(InkKind::node, around(radius), rounding, style)};
}

Inks letters(std::string words, InkStyle style) {
  constexpr double kBelow = 0.62;
  return {text_ink(InkKind::finger,
                   {std::move(words), {kMiddle, kMiddle + kBelow}, kFingerSize, Anchor::middle},
                   style)};
}

Inks bow(double bend) {
  return {bow_ink(InkKind::bow, {0.2, kMiddle - bend / 2}, {3.4, kMiddle - bend / 2}, bend)};
}

Inks lines() {
  Inks inks;
  for (const double y : {0.6, 2.4}) {
    inks.push_back(line_ink(InkKind::ribbon_line, {0, y}, {3.4, y}, 0.1));
  }
  return inks;
}

void add_kinds(const Used& used, std::vector<LegendDrawing>& found) {
  constexpr double kInner = kNodeRadius - kRing / 2;
  constexpr double kOuter = kNodeRadius + kRing / 2;
  if (used.has(Rotation::single_rotation)) {
    found.push_back(drawing(plate(InkStyle::single, kNodeRadius, kNodeRadius), kSide,
                            "single: the note before has prepared it"));
  }
  if (used.has(Rotation::double_rotation)) {
    Inks rings = plate(InkStyle::ring, kOuter, kOuter);
    append(rings, plate(InkStyle::filled, kInner, kInner));
    found.push_back(drawing(std::move(rings), kSide, "double: swing back first, then play"));
  }
  if (used.has(Rotation::preparatory)) {
    found.push_back(drawing(plate(InkStyle::corners, kNodeRadius, kNodeCorner), kSide,
                            "first of a gesture: swing out first"));
  }
  if (used.has(Rotation::level)) {
    const Box box{kMiddle - 0.7, 0.1, kMiddle + 0.7, kSide - 0.1};
    found.push_back(drawing({plate_ink(InkKind::node, box, 0.7, InkStyle::level)}, kSide,
                            "level: both sides of the hand together, without a turn"));
  }
  if (used.has(Rotation::undetermined)) {
    Inks inks = plate(InkStyle::open, kNodeRadius, kNodeRadius);
    append(inks, letters("?", InkStyle::strong));
    found.push_back(drawing(std::move(inks), kSide, "a finger is missing: undetermined"));
  }
}

}  // namespace

std::vector<LegendDrawing> legend_drawings(const Used& used) {
  constexpr double kWide = 3.6;
  std::vector<LegendDrawing> found;
  add_kinds(used, found);
  if (used.has(Crossing::thumb_under)) found.push_back(drawing(bow(1), kWide, "thumb under"));
  if (used.has(Crossing::finger_over_thumb)) {
    found.push_back(drawing(bow(-1), kWide, "over the thumb"));
  }
  if (used.has(Crossing::finger_crossing)) {
    Inks both = bow(1);
    append(both, bow(-1));
    found.push_back(drawing(std::move(both), kWide, "fingers pass one another"));
  }
  if (used.carries) {
    Inks inks = letters("→2", InkStyle::plain);
    found.push_back(drawing(std::move(inks), kSide, "the arm carries the hand two white keys"));
  }
  if (used.suggestions) {
    found.push_back(drawing(letters("2", InkStyle::suggested), kSide, "slanted: finger suggested"));
  }
  if (used.has_sides()) {
    found.push_back(
        drawing(lines(), kWide,
                "upper line: to the right, lower: to the left, for both hands; full: plays, "
                "dashed: prepares"));
  }
  return found;
}

}  // namespace fingerturn
