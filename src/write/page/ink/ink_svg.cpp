#include "write/page/ink/ink_svg.hpp"

#include "text/escape.hpp"
#include "write/page/ink/path_text.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr std::array<std::string_view, 19> kStyles{
    "",      "play",   "back",  "one",  "ring",     "two",   "first", "level",   "open",   "on",
    "offer", "strong", "quiet", "flag", "on offer", "white", "black", "onwhite", "onblack"};

std::string_view name_of(InkStyle style) { return kStyles.at(static_cast<std::size_t>(style)); }

/// The class of a stroke.
std::string_view class_of(const Ink& ink) {
  if (ink.style != InkStyle::plain) return name_of(ink.style);
  switch (ink.kind) {
    case InkKind::staff_line:
    case InkKind::ledger:
      return "staff";
    case InkKind::ribbon_line:
      return "side";
    case InkKind::bow:
      return "bow";
    default:
      return {};
  }
}

void open_tag(std::string& out, std::string_view tag, std::string_view name) {
  out += '<';
  out += tag;
  if (name.empty()) return;
  out += " class=\"";
  out += name;
  out += '"';
}

/// Plates that stand many times, each drawn once and referred to by its middle. The inner plate of
/// a double is drawn with its ring.
struct PlateSymbol {
  std::string_view id;
  InkStyle style;
  double radius = 0;
  double rounding = 0;
};

constexpr PlateSymbol kInnerPlate{"", InkStyle::filled, kNodeRadius - kRing / 2,
                                  kNodeRadius - kRing / 2};

bool is_like(const PlateSymbol& symbol, InkStyle style, const PlateInk& plate) {
  return symbol.style == style && symbol.rounding == plate.rounding &&
         hundredths(plate.box.width()) == hundredths(2 * symbol.radius) &&
         hundredths(plate.box.height()) == hundredths(2 * symbol.radius);
}

void add_plate(std::string& out, const PlateSymbol& symbol) {
  open_tag(out, "rect", name_of(symbol.style));
  if (!symbol.id.empty()) out += fmt::format(R"( id="{}")", symbol.id);
  add_attribute(out, "x", -symbol.radius);
  add_attribute(out, "y", -symbol.radius);
  add_attribute(out, "width", 2 * symbol.radius);
  add_attribute(out, "height", 2 * symbol.radius);
  add_attribute(out, "rx", symbol.rounding);
  out += "/>";
}

constexpr std::array<PlateSymbol, kPlates> kPlateSymbols{
    PlateSymbol{"n1", InkStyle::single, kNodeRadius, kNodeRadius},
    PlateSymbol{"n2", InkStyle::ring, kNodeRadius + kRing / 2, kNodeRadius + kRing / 2},
    PlateSymbol{"n0", InkStyle::corners, kNodeRadius, kNodeCorner},
    PlateSymbol{"n", InkStyle::open, kNodeRadius, kNodeRadius},
    PlateSymbol{"t", InkStyle::prepare, kTurnRadius, kTurnRadius}};

/// Half a double swing, over the whole height of the ribbon, as it stands in most of them.
struct HalfSwing {
  std::string_view id;
  InkStyle style;
  double height = 0;
};

constexpr double kHalfSwing = kDoubleSwing / 2;
constexpr std::array<HalfSwing, kHalfSwingShapes> kHalfSwings{
    HalfSwing{"bu", InkStyle::prepare, -kRibbonHeight},
    HalfSwing{"bd", InkStyle::prepare, kRibbonHeight},
    HalfSwing{"pu", InkStyle::play, -kRibbonHeight},
    HalfSwing{"pd", InkStyle::play, kRibbonHeight}};

std::optional<std::size_t> half_swing(InkStyle style, const SwingInk& swing) {
  for (std::size_t i = 0; i < kHalfSwings.size(); ++i) {
    const HalfSwing& half = kHalfSwings.at(i);
    if (half.style == style && hundredths(swing.to.x - swing.from.x) == hundredths(kHalfSwing) &&
        hundredths(swing.to.y - swing.from.y) == hundredths(half.height)) {
      return i;
    }
  }
  return std::nullopt;
}

void add_curve(PathText& path, const SwingInk& swing) {
  const double middle = (swing.from.x + swing.to.x) / 2;
  path.move_to(swing.from);
  path.curve_to({middle, swing.from.y}, {middle, swing.to.y}, swing.to);
}

/// Strokes of one look, drawn as one path.
struct Strokes {
  std::string_view name;
  double width = 0;  ///< 0 where the class says it
  PathText path;
};

/// Words of one look. Single letters are written as one text, each with a place of its own.
struct Words {
  std::string name;
  double size = 0;  ///< 0 where the class says it
  std::string text;
  std::string letters;
  std::string x;
  std::string y;

  void add_letter(char letter, Point at) {
    if (!letters.empty()) {
      x += ' ';
      y += ' ';
    }
    letters += letter;
    add_length(x, at.x);
    add_length(y, at.y);
  }
};

void add_use(std::string& out, std::string_view id, Point at) {
  out += "<use href=\"#";
  out += id;
  out += '"';
  add_attribute(out, "x", at.x);
  add_attribute(out, "y", at.y);
  out += "/>";
}

/// The places of what is drawn once and referred to.
struct Places {
  std::size_t number = 0;  ///< in GlyphsUsed
  std::string_view id;
  std::vector<Point> points;
};

/// As the corners of a line that nobody sees: a third of the letters of a reference for each.
void add_as_corners(std::string& out, const Places& places) {
  PathText path;
  path.move_to(places.points.front());
  for (std::size_t i = 1; i < places.points.size(); ++i) path.line_to(places.points[i]);
  out += fmt::format(R"svg(<path class="at" style="marker:url(#m-{})" d="{}"/>)svg", places.id,
                     path.text());
}

/// What stands at each corner.
void add_marker(std::string& out, std::string_view id) {
  out += fmt::format(R"(<marker id="m-{0}" markerUnits="userSpaceOnUse" overflow="visible">)"
                     R"(<use href="#{0}"/></marker>)",
                     id);
  out += '\n';
}

/// Gathers inks by how they are drawn, so that a page does not say for each what it says for all.
class InkWriter {
 public:
  InkWriter(GlyphsUsed& used, Repeats repeats) : used_(used), repeats_(repeats) {}

  void add(const Ink& ink) {
    std::visit([this, &ink](const auto& shape) { this->add(ink, shape); }, ink.shape);
  }

  void write(std::string& out) {
    for (const Strokes& strokes : strokes_) {
      open_tag(out, "path", strokes.name);
      if (strokes.width > 0) add_attribute(out, "stroke-width", strokes.width);
      out += " d=\"" + strokes.path.text() + "\"/>";
    }
    if (!filled_.text().empty()) out += R"(<path class="ink" d=")" + filled_.text() + "\"/>";
    for (const Places& places : swing_places_) write(out, places);
    out += glyphs_;
    for (const Places& places : glyph_places_) write(out, places);
    out += plates_;
    for (const Places& places : plate_places_) write(out, places);
    for (const Words& words : words_) {
      open_tag(out, "g", words.name);
      if (words.size > 0) {
        out += " style=\"font-size:";
        add_length(out, words.size);
        out += "px\"";
      }
      out += ">" + words.text;
      if (!words.letters.empty()) {
        out += "<text x=\"" + words.x + "\" y=\"" + words.y + "\">" + words.letters + "</text>";
      }
      out += "</g>";
    }
  }

 private:
  PathText& path_of(const Ink& ink, double width) {
    const std::string_view name = class_of(ink);
    for (Strokes& strokes : strokes_) {
      if (strokes.name == name && strokes.width == width) return strokes.path;
    }
    return strokes_.emplace_back(Strokes{name, width, {}}).path;
  }

  void write(std::string& out, const Places& places) {
    constexpr std::size_t kFewPlaces = 2;
    if (repeats_ == Repeats::corners && places.points.size() > kFewPlaces) {
      used_.at_corners.set(places.number);
      return add_as_corners(out, places);
    }
    for (const Point point : places.points) add_use(out, places.id, point);
  }

  void add_place(std::vector<Places>& all, std::size_t number, std::string_view id, Point point) {
    used_.all.set(number);
    const auto known = std::ranges::find(all, number, &Places::number);
    if (known != all.end()) return known->points.push_back(point);
    all.push_back({number, id, {point}});
  }

  Words& words_of(std::string_view name, double size) {
    for (Words& words : words_) {
      if (words.name == name && words.size == size) return words;
    }
    Words& words = words_.emplace_back();
    words.name = name;
    words.size = size;
    return words;
  }

  void add(const Ink& /*ink*/, const GlyphInk& glyph) {
    const auto number = static_cast<std::size_t>(glyph.glyph);
    const std::string_view id = outline_of(glyph.glyph).id;
    if (glyph.scale == 1) return add_place(glyph_places_, number, id, glyph.at);
    used_.all.set(number);
    glyphs_ += "<use href=\"#";
    glyphs_ += id;
    glyphs_ += "\" transform=\"translate(";
    add_length(glyphs_, glyph.at.x);
    glyphs_ += ' ';
    add_length(glyphs_, glyph.at.y);
    glyphs_ += ")scale(";
    add_length(glyphs_, glyph.scale);
    glyphs_ += ")\"/>";
  }

  void add(const Ink& ink, const LineInk& line) {
    PathText& path = path_of(ink, ink.kind == InkKind::swing ? 0 : line.width);
    path.move_to(line.from);
    path.line_to(line.to);
  }

  void add(const Ink& /*ink*/, const BeamInk& beam) {
    filled_.move_to(beam.from);
    filled_.line_to(beam.to);
    filled_.line_to({beam.to.x, beam.to.y + beam.thickness});
    filled_.line_to({beam.from.x, beam.from.y + beam.thickness});
    filled_.close();
  }

  /// A lens for a tie, a line for a bow.
  void add(const Ink& ink, const BowInk& bow) {
    constexpr double kHandle = 4.0 / 3;
    constexpr double kThickness = 0.2;
    const double width = bow.to.x - bow.from.x;
    PathText& path = bow.filled ? filled_ : path_of(ink, 0);
    const auto curve = [&](Point from, Point to, double bend) {
      const double along = to.x > from.x ? width / 4 : -width / 4;
      path.curve_to({from.x + along, from.y + bend}, {to.x - along, to.y + bend}, to);
    };
    path.move_to(bow.from);
    curve(bow.from, bow.to, bow.bend * kHandle);
    if (!bow.filled) return;
    curve(bow.to, bow.from,
          (bow.bend > 0 ? bow.bend - kThickness : bow.bend + kThickness) * kHandle);
    path.close();
  }

  void add(const Ink& ink, const SwingInk& swing) {
    const std::optional<std::size_t> half = half_swing(ink.style, swing);
    if (repeats_ == Repeats::corners && half) {
      return add_place(swing_places_, kGlyphs + kPlateSymbols.size() + *half,
                       kHalfSwings.at(*half).id, swing.from);
    }
    add_curve(path_of(ink, 0), swing);
  }

  void add(const Ink& ink, const PlateInk& plate) {
    const Point middle{(plate.box.left + plate.box.right) / 2,
                       (plate.box.top + plate.box.bottom) / 2};
    if (is_like(kInnerPlate, ink.style, plate)) return;
    for (std::size_t i = 0; i < kPlateSymbols.size(); ++i) {
      if (!is_like(kPlateSymbols[i], ink.style, plate)) continue;
      return add_place(plate_places_, kGlyphs + i, kPlateSymbols[i].id, middle);
    }
    open_tag(plates_, "rect", name_of(ink.style));
    add_attribute(plates_, "x", plate.box.left);
    add_attribute(plates_, "y", plate.box.top);
    add_attribute(plates_, "width", plate.box.width());
    add_attribute(plates_, "height", plate.box.height());
    if (plate.rounding > 0) add_attribute(plates_, "rx", plate.rounding);
    plates_ += "/>";
  }

  void add(const Ink& ink, const TextInk& text) {
    constexpr std::array<std::string_view, 3> kAnchors{"", " mid", " end"};
    const bool is_finger = ink.kind == InkKind::finger;
    std::string name(ink.style == InkStyle::plain ? "plain" : name_of(ink.style));
    name += is_finger ? " f" : kAnchors.at(static_cast<std::size_t>(text.anchor));
    if (ink.kind == InkKind::bar_number || ink.kind == InkKind::ottava) name += " slant";
    Words& words = words_of(name, is_finger && text.size == kFingerSize ? 0 : text.size);
    if (is_finger && text.words.size() == 1) return words.add_letter(text.words[0], text.at);
    std::string& out = words.text;
    out += "<text";
    add_attribute(out, "x", text.at.x);
    add_attribute(out, "y", text.at.y);
    out += '>';
    out += escaped_markup(text.words);
    out += "</text>";
  }

  GlyphsUsed& used_;
  Repeats repeats_;
  std::vector<Strokes> strokes_;  ///< behind the rest
  PathText filled_;
  std::vector<Places> swing_places_;
  std::string glyphs_;
  std::vector<Places> glyph_places_;
  std::string plates_;
  std::vector<Places> plate_places_;
  std::vector<Words> words_;
};

}  // namespace

void add_inks(std::string& out, const Inks& inks, GlyphsUsed& used, Repeats repeats) {
  InkWriter writer(used, repeats);
  for (const Ink& ink : inks) writer.add(ink);
  writer.write(out);
}

void add_outlines(std::string& out, const GlyphsUsed& used) {
  for (std::size_t i = 0; i < kPlateSymbols.size(); ++i) {
    if (!used.all[kGlyphs + i]) continue;
    const PlateSymbol& symbol = kPlateSymbols[i];
    if (symbol.style == InkStyle::ring) {
      PlateSymbol ring = symbol;
      ring.id = "";
      out += fmt::format(R"(<g id="{}">)", symbol.id);
      add_plate(out, ring);
      add_plate(out, kInnerPlate);
      out += "</g>\n";
    } else {
      add_plate(out, symbol);
      out += '\n';
    }
    if (used.at_corners[kGlyphs + i]) add_marker(out, symbol.id);
  }
  for (std::size_t i = 0; i < kHalfSwings.size(); ++i) {
    const std::size_t number = kGlyphs + kPlateSymbols.size() + i;
    if (!used.all[number]) continue;
    const HalfSwing& half = kHalfSwings.at(i);
    PathText path;
    add_curve(path, {{0, 0}, {kHalfSwing, half.height}});
    out += fmt::format(R"svg(<path id="{}" class="{}" d="{}"/>)svg", half.id, name_of(half.style),
                       path.text());
    out += '\n';
    if (used.at_corners[number]) add_marker(out, half.id);
  }
  for (std::size_t i = 0; i < kGlyphs; ++i) {
    if (!used.all[i]) continue;
    const Outline& outline = outline_of(static_cast<Glyph>(i));
    out += fmt::format(R"svg(<path id="{}" class="ink" transform="scale(.004)" d="{}"/>)svg",
                       outline.id, outline.path);
    out += '\n';
    if (used.at_corners[i]) add_marker(out, outline.id);
  }
}

}  // namespace fingerturn
