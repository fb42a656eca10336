#include "write/page/ink/ink_svg.hpp"

#include "text/escape.hpp"

#include <array>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <vector>

#include <fmt/format.h>

namespace fingerturn {
namespace {

/// A length to two decimals, without trailing zeros.
void add_length(std::string& out, double length) {
  const auto hundredths = static_cast<std::int64_t>(std::llround(length * 100));
  if (hundredths < 0) out += '-';
  const std::int64_t size = std::abs(hundredths);
  const fmt::format_int whole(size / 100);
  if (size < 100) {
    if (size == 0) out += '0';
  } else {
    out.append(whole.data(), whole.size());
  }
  const auto fraction = static_cast<int>(size % 100);
  if (fraction == 0) return;
  out += '.';
  out += static_cast<char>('0' + fraction / 10);
  if (fraction % 10 != 0) out += static_cast<char>('0' + fraction % 10);
}

void add_point(std::string& out, std::string_view before, Point point) {
  out += before;
  add_length(out, point.x);
  out += ' ';
  add_length(out, point.y);
}

void add_attribute(std::string& out, std::string_view name, double length) {
  out += ' ';
  out += name;
  out += "=\"";
  add_length(out, length);
  out += '"';
}

constexpr std::array<std::string_view, 15> kStyles{"",      "play",   "back",  "one",  "ring",
                                                   "two",   "first",  "level", "open", "on",
                                                   "offer", "strong", "quiet", "flag", "on offer"};

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

/// Strokes of one look, drawn as one path.
struct Strokes {
  std::string_view name;
  double width = 0;  ///< 0 where the class says it
  std::string path;
};

/// Gathers inks by how they are drawn, so that a page does not say for each what it says for all.
class InkWriter {
 public:
  explicit InkWriter(GlyphsUsed& used) : used_(used) {}

  void add(const Ink& ink) {
    std::visit([&](const auto& shape) { add(ink, shape); }, ink.shape);
  }

  void write(std::string& out) const {
    for (const Strokes& strokes : strokes_) {
      out += "<path";
      if (!strokes.name.empty()) {
        out += " class=\"";
        out += strokes.name;
        out += '"';
      }
      if (strokes.width > 0) add_attribute(out, "stroke-width", strokes.width);
      out += " d=\"" + strokes.path + "\"/>";
    }
    if (!filled_.empty()) out += "<path class=\"ink\" d=\"" + filled_ + "\"/>";
    out += glyphs_;
    out += front_;
  }

 private:
  std::string& path_of(const Ink& ink, double width) {
    const std::string_view name = class_of(ink);
    for (Strokes& strokes : strokes_) {
      if (strokes.name == name && strokes.width == width) return strokes.path;
    }
    return strokes_.emplace_back(name, width, std::string()).path;
  }

  void add(const Ink& /*ink*/, const GlyphInk& glyph) {
    used_.set(static_cast<std::size_t>(glyph.glyph));
    glyphs_ += "<use href=\"#";
    glyphs_ += outline_of(glyph.glyph).id;
    glyphs_ += '"';
    if (glyph.scale == 1) {
      add_attribute(glyphs_, "x", glyph.at.x);
      add_attribute(glyphs_, "y", glyph.at.y);
    } else {
      add_point(glyphs_, " transform=\"translate(", glyph.at);
      glyphs_ += ")scale(";
      add_length(glyphs_, glyph.scale);
      glyphs_ += ")\"";
    }
    glyphs_ += "/>";
  }

  void add(const Ink& ink, const LineInk& line) {
    const bool has_own = ink.kind == InkKind::swing;
    std::string& path = path_of(ink, has_own ? 0 : line.width);
    add_point(path, "M", line.from);
    if (line.from.y == line.to.y) {
      path += 'H';
      add_length(path, line.to.x);
    } else if (line.from.x == line.to.x) {
      path += 'V';
      add_length(path, line.to.y);
    } else {
      add_point(path, "L", line.to);
    }
  }

  void add(const Ink& /*ink*/, const BeamInk& beam) {
    add_point(filled_, "M", beam.from);
    add_point(filled_, "L", beam.to);
    filled_ += 'v';
    add_length(filled_, beam.thickness);
    add_point(filled_, "L", {beam.from.x, beam.from.y + beam.thickness});
    filled_ += 'z';
  }

  /// A lens for a tie, a line for a bow.
  void add(const Ink& ink, const BowInk& bow) {
    constexpr double kHandle = 4.0 / 3;
    constexpr double kThickness = 0.2;
    const double width = bow.to.x - bow.from.x;
    std::string& path = bow.filled ? filled_ : path_of(ink, 0);
    const auto curve = [&](Point from, Point to, double bend) {
      const double along = to.x > from.x ? width / 4 : -width / 4;
      add_point(path, "C", {from.x + along, from.y + bend});
      add_point(path, " ", {to.x - along, to.y + bend});
      add_point(path, " ", to);
    };
    add_point(path, "M", bow.from);
    curve(bow.from, bow.to, bow.bend * kHandle);
    if (!bow.filled) return;
    curve(bow.to, bow.from,
          (bow.bend > 0 ? bow.bend - kThickness : bow.bend + kThickness) * kHandle);
    path += 'z';
  }

  void add(const Ink& ink, const SwingInk& swing) {
    std::string& path = path_of(ink, 0);
    const double middle = (swing.from.x + swing.to.x) / 2;
    add_point(path, "M", swing.from);
    add_point(path, "C", {middle, swing.from.y});
    add_point(path, " ", {middle, swing.to.y});
    add_point(path, " ", swing.to);
  }

  void add(const Ink& ink, const PlateInk& plate) {
    front_ += "<rect class=\"";
    front_ += name_of(ink.style);
    front_ += '"';
    add_attribute(front_, "x", plate.box.left);
    add_attribute(front_, "y", plate.box.top);
    add_attribute(front_, "width", plate.box.width());
    add_attribute(front_, "height", plate.box.height());
    if (plate.rounding > 0) add_attribute(front_, "rx", plate.rounding);
    front_ += "/>";
  }

  void add(const Ink& ink, const TextInk& text) {
    constexpr std::array<std::string_view, 3> kAnchors{"", " mid", " end"};
    front_ += "<text class=\"";
    front_ += ink.style == InkStyle::plain ? "plain" : name_of(ink.style);
    if (ink.kind != InkKind::finger) {
      front_ += kAnchors.at(static_cast<std::size_t>(text.anchor));
    } else {
      front_ += " f";
    }
    if (ink.kind == InkKind::bar_number || ink.kind == InkKind::ottava) front_ += " slant";
    front_ += '"';
    add_attribute(front_, "x", text.at.x);
    add_attribute(front_, "y", text.at.y);
    if (ink.kind != InkKind::finger || text.size != kFingerSize) {
      front_ += " style=\"font-size:";
      add_length(front_, text.size);
      front_ += "px\"";
    }
    front_ += '>';
    front_ += escaped_markup(text.words);
    front_ += "</text>";
  }

  GlyphsUsed& used_;
  std::vector<Strokes> strokes_;  ///< behind the rest
  std::string filled_;
  std::string glyphs_;
  std::string front_;
};

}  // namespace

void add_inks(std::string& out, const Inks& inks, GlyphsUsed& used) {
  InkWriter writer(used);
  for (const Ink& ink : inks) writer.add(ink);
  writer.write(out);
}

void add_outlines(std::string& out, const GlyphsUsed& used) {
  for (std::size_t i = 0; i < kGlyphs; ++i) {
    if (!used[i]) continue;
    const Outline& outline = outline_of(static_cast<Glyph>(i));
    out += fmt::format(R"svg(<path id="{}" class="ink" transform="scale(.004)" d="{}"/>)svg",
                       outline.id, outline.path);
    out += '\n';
  }
}

/// Shape and stroke tell the kinds apart; colour only repeats it. Blue and orange are apart for
/// every common form of colour blindness, and as light and dark on paper.
std::string_view ink_style() noexcept {
  return R"(.music{fill:none;stroke:#1c2126;stroke-linecap:butt}
.music .ink,.music use{fill:#1c2126;stroke:none}
.music text{fill:#1c2126;stroke:none;font-family:system-ui,"Segoe UI",Roboto,"DejaVu Sans",sans-serif}
.music .f{text-anchor:middle;font-size:1.78px}
.music .mid{text-anchor:middle}
.music .end{text-anchor:end}
.music .slant,.music .offer{font-style:italic}
.music .strong,.music .on{font-weight:700}
.music .on.offer{font-weight:400}
.music .on{fill:#fff}
.music .quiet{fill:#555d66}
.music .staff{stroke:#4a525b}
.music .side{stroke:#8d96a0}
.music .play{stroke:#14507d;stroke-width:.3}
.music .back{stroke:#a03c00;stroke-width:.22;stroke-dasharray:.5 .36}
.music rect.back{fill:#fff;stroke-dasharray:none}
.music .one{fill:#fff;stroke:#14507d;stroke-width:.26}
.music .two{fill:#a03c00;stroke:none}
.music .ring{fill:#fff;stroke:#a03c00;stroke-width:.22}
.music .first{fill:#fff;stroke:#5c3c8c;stroke-width:.32}
.music .level{fill:#fff;stroke:#1c2126;stroke-width:.22}
.music .open{fill:#fff;stroke:#555d66;stroke-width:.2;stroke-dasharray:.4 .3}
.music .flag{fill:#fff;stroke:#1c2126;stroke-width:.14}
.music .bow{stroke-width:.2}
@media screen and (prefers-color-scheme:dark){
.music,.music .level,.music .flag{stroke:#e6e9ec}
.music .ink,.music use,.music text{fill:#e6e9ec;stroke:none}
.music .on{fill:#14181d}
.music .quiet{fill:#a9b2bb}
.music .staff{stroke:#b3bac2}
.music .side{stroke:#7d8791}
.music .play,.music .one{stroke:#7fc0f5}
.music .back,.music .ring{stroke:#ffab70}
.music .two{fill:#ffab70}
.music .first{stroke:#c3a6f0}
.music .open{stroke:#a9b2bb}
.music rect.back,.music .one,.music .ring,.music .first,.music .level,.music .open,.music .flag{fill:#14181d}
}
)";
}

}  // namespace fingerturn
