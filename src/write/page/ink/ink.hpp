#pragma once

#include "write/page/glyphs/outlines.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <variant>
#include <vector>

/// What a page shows, as plain values: each piece of ink with its kind, its place and the box that
/// it fills. Lengths are staff spaces, y downwards.
namespace fingerturn {

struct Point {
  double x = 0;
  double y = 0;
};

enum class InkKind : std::uint8_t {
  staff_line,
  bar_line,
  brace,
  clef,
  key_sign,
  meter,
  head,
  stem,
  flag,
  beam,
  sign,
  dot,
  ledger,
  rest,
  tie,
  slur,
  tuplet,
  ottava,
  ornament,
  breath,
  fermata,
  dynamic,
  hairpin,
  ending,
  arpeggio,
  bar_number,
  ribbon_line,
  ribbon_name,
  swing,
  turn,
  node,
  finger,
  carry,
  bow,
  watch_flag,
  key,
  words
};
inline constexpr std::size_t kInkKinds = static_cast<std::size_t>(InkKind::words) + 1;

/// How something is drawn: the names of the styles of a page.
enum class InkStyle : std::uint8_t {
  plain,
  play,
  prepare,
  single,
  ring,
  filled,
  corners,
  level,
  open,
  on_filled,
  suggested,
  strong,
  quiet,
  flag,
  suggested_on_filled,
  white_key,
  black_key,
  on_white_key,
  on_black_key
};

/// Half the size of a node and of the small ring where the forearm turns, how wide the gap to an
/// outer ring is, and how far corners are rounded.
inline constexpr double kNodeRadius = 1.09;
inline constexpr double kRing = 0.34;
inline constexpr double kNodeCorner = 0.15;
inline constexpr double kTurnRadius = 0.3;
/// How far apart the lines are.
inline constexpr double kRibbonHeight = 3.125;
inline constexpr double kDoubleSwing = 3;  ///< how wide a double swing is, back and forth

/// The size of a finger in its node, in staff spaces: letters of 8 point.
inline constexpr double kFingerSize = 1.78;

struct GlyphInk {
  Glyph glyph;
  Point at;
  double scale = 1;
};
struct LineInk {
  Point from;
  Point to;
  double width = 0;
};
/// A beam: the two ends of its upper edge, and how thick it is.
struct BeamInk {
  Point from;
  Point to;
  double thickness = 0;
};
/// A tie or bow between two points; `bend` is how far its middle lies below them, or above.
struct BowInk {
  Point from;
  Point to;
  double bend = 0;
  bool filled = true;
};
/// A curve that leaves and arrives level.
struct SwingInk {
  Point from;
  Point to;
};
struct PlateInk {
  Box box;
  double rounding = 0;
};
enum class Anchor : std::uint8_t { start, middle, end };
struct TextInk {
  std::string words;
  Point at;
  double size = 0;
  Anchor anchor = Anchor::start;
};

struct Ink {
  using Shape = std::variant<GlyphInk, LineInk, BeamInk, BowInk, SwingInk, PlateInk, TextInk>;

  InkKind kind = InkKind::words;
  InkStyle style = InkStyle::plain;
  Box box;
  Shape shape;

  void move(double x, double y);
};

using Inks = std::vector<Ink>;

/// Where a bow is at a part of its way, from 0 to 1.
double height_of(const BowInk& bow, double way) noexcept;

Ink glyph_ink(InkKind kind, Glyph glyph, Point at, double scale = 1);
Ink line_ink(InkKind kind, Point from, Point to, double width);
Ink beam_ink(Point from, Point to, double thickness);
Ink bow_ink(InkKind kind, Point from, Point to, double bend);
Ink swing_ink(Point from, Point to, InkStyle style);
Ink plate_ink(InkKind kind, const Box& box, double rounding, InkStyle style);
Ink text_ink(InkKind kind, TextInk text, InkStyle style = InkStyle::plain);

/// How wide words of a size are, roughly: browsers choose the letters.
double text_width(std::string_view words, double size);

/// The least box that holds two.
Box both(const Box& one, const Box& other) noexcept;
/// What all of them fill; a box of nothing where there are none.
Box box_of(const Inks& inks) noexcept;
void move_all(Inks& inks, double x, double y);
void append(Inks& inks, Inks more);

}  // namespace fingerturn
