#include "write/page/ink/ink_svg.hpp"

#include "text/escape.hpp"

#include <array>
#include <cmath>
#include <cstdint>
#include <cstdlib>

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

constexpr std::array<std::string_view, 13> kStyles{"",      "play",   "back",  "one",  "ring",
                                                   "two",   "first",  "level", "open", "on",
                                                   "offer", "strong", "quiet"};

std::string_view name_of(InkStyle style) { return kStyles.at(static_cast<std::size_t>(style)); }

std::string_view kind_class(InkKind kind) {
  switch (kind) {
    case InkKind::staff_line:
    case InkKind::ledger:
      return "staff";
    case InkKind::ribbon_line:
      return "side";
    default:
      return {};
  }
}

class InkWriter {
 public:
  InkWriter(std::string& out, const Ink& ink, GlyphsUsed& used)
      : out_(out), ink_(ink), used_(used) {}

  void operator()(const GlyphInk& glyph) {
    used_.set(static_cast<std::size_t>(glyph.glyph));
    out_ += "<use href=\"#";
    out_ += outline_of(glyph.glyph).id;
    out_ += '"';
    if (glyph.scale == 1) {
      add_attribute(out_, "x", glyph.at.x);
      add_attribute(out_, "y", glyph.at.y);
    } else {
      add_point(out_, " transform=\"translate(", glyph.at);
      out_ += ")scale(";
      add_length(out_, glyph.scale);
      out_ += ")\"";
    }
    out_ += "/>";
  }

  void operator()(const LineInk& line) {
    open("path");
    add_point(out_, " d=\"M", line.from);
    add_point(out_, "L", line.to);
    out_ += "\" stroke-width=\"";
    add_length(out_, line.width);
    out_ += "\"/>";
  }

  void operator()(const BeamInk& beam) {
    out_ += "<path class=\"ink\"";
    add_point(out_, " d=\"M", beam.from);
    add_point(out_, "L", beam.to);
    add_point(out_, "v", {0, 0});
    out_.resize(out_.size() - 3);
    add_length(out_, beam.thickness);
    add_point(out_, "L", {beam.from.x, beam.from.y + beam.thickness});
    out_ += "z\"/>";
  }

  /// A lens for a tie, a line for a bow.
  void operator()(const BowInk& bow) {
    constexpr double kHandle = 4.0 / 3;
    constexpr double kThickness = 0.2;
    const double width = bow.to.x - bow.from.x;
    const auto curve = [&](Point from, Point to, double bend) {
      const double sign = to.x > from.x ? 1 : -1;
      add_point(out_, "C", {from.x + sign * width / 4, from.y + bend});
      add_point(out_, " ", {to.x - sign * width / 4, to.y + bend});
      add_point(out_, " ", to);
    };
    out_ += bow.filled ? "<path class=\"ink\"" : "<path class=\"bow\"";
    add_point(out_, " d=\"M", bow.from);
    curve(bow.from, bow.to, bow.bend * kHandle);
    if (bow.filled) {
      const double inner = bow.bend > 0 ? bow.bend - kThickness : bow.bend + kThickness;
      curve(bow.to, bow.from, inner * kHandle);
      out_ += 'z';
    }
    out_ += "\"/>";
  }

  void operator()(const SwingInk& swing) {
    const double middle = (swing.from.x + swing.to.x) / 2;
    open("path");
    add_point(out_, " d=\"M", swing.from);
    add_point(out_, "C", {middle, swing.from.y});
    add_point(out_, " ", {middle, swing.to.y});
    add_point(out_, " ", swing.to);
    out_ += "\"/>";
  }

  void operator()(const PlateInk& plate) {
    open("rect");
    add_attribute(out_, "x", plate.box.left);
    add_attribute(out_, "y", plate.box.top);
    add_attribute(out_, "width", plate.box.width());
    add_attribute(out_, "height", plate.box.height());
    if (plate.rounding > 0) add_attribute(out_, "rx", plate.rounding);
    out_ += "/>";
  }

  void operator()(const TextInk& text) {
    constexpr std::array<std::string_view, 3> kAnchors{"", "mid", "end"};
    out_ += "<text class=\"";
    out_ += name_of(ink_.style);
    const std::string_view anchor = kAnchors.at(static_cast<std::size_t>(text.anchor));
    if (!anchor.empty()) {
      if (ink_.style != InkStyle::plain) out_ += ' ';
      out_ += anchor;
    }
    if (ink_.kind == InkKind::bar_number || ink_.kind == InkKind::ottava) out_ += " slant";
    out_ += '"';
    add_attribute(out_, "x", text.at.x);
    add_attribute(out_, "y", text.at.y);
    add_attribute(out_, "font-size", text.size);
    out_ += '>';
    out_ += escaped_markup(text.words);
    out_ += "</text>";
  }

 private:
  void open(std::string_view tag) {
    out_ += '<';
    out_ += tag;
    const std::string_view name =
        ink_.style == InkStyle::plain ? kind_class(ink_.kind) : name_of(ink_.style);
    if (!name.empty()) {
      out_ += " class=\"";
      out_ += name;
      out_ += '"';
    }
  }

  std::string& out_;
  const Ink& ink_;
  GlyphsUsed& used_;
};

}  // namespace

void add_inks(std::string& out, const Inks& inks, GlyphsUsed& used) {
  for (const Ink& ink : inks) std::visit(InkWriter(out, ink, used), ink.shape);
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
.music .mid{text-anchor:middle}
.music .end{text-anchor:end}
.music .slant,.music .offer{font-style:italic}
.music .strong,.music .on{font-weight:700}
.music .on{fill:#fff}
.music .quiet{fill:#555d66}
.music .staff{stroke:#5d656e}
.music .side{stroke:#8d96a0}
.music .play{stroke:#14507d;stroke-width:.3}
.music .back{stroke:#a03c00;stroke-width:.22;stroke-dasharray:.5 .36}
.music rect.back{fill:#fff;stroke-dasharray:none}
.music .one{fill:#fff;stroke:#14507d;stroke-width:.26}
.music .two{fill:#a03c00;stroke:none}
.music .ring{fill:#fff;stroke:#a03c00;stroke-width:.22}
.music .first{fill:#fff;stroke:#5c3c8c;stroke-width:.32}
.music .level{fill:#fff;stroke:#1c2126;stroke-width:.22}
.music .open{fill:#fff;stroke:#555d66;stroke-width:.2}
.music .missing{stroke-dasharray:.4 .3}
.music .bow{stroke-width:.2}
)";
}

}  // namespace fingerturn
