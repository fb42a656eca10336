#include "fingerturn/report.hpp"
#include "text/escape.hpp"
#include "text/text_out.hpp"
#include "text/utf8.hpp"
#include "text/wrap.hpp"
#include "write/page/part.hpp"
#include "write/page/picture_legend.hpp"
#include "write/page/svg_frame.hpp"
#include "write/page/svg_picture.hpp"
#include "write/page/svg_style.hpp"
#include "write/shared/passage_words.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <fmt/core.h>

/// The picture alone: systems below one another, with the notes and kinds as rows of words.
namespace fingerturn {
namespace {

constexpr int kMargin = 12;
constexpr int kNames = 58;  // the names of lanes and rows, left of the notes
constexpr int kWidth = kMargin + kNames + kWidestSystem + kMargin;
constexpr int kLine = 15;
constexpr int kHalfLine = kLine / 2;
constexpr int kBetweenSystems = 18;

/// A drawing that grows downwards.
struct Drawing : TextFlow {
  double y = kMargin;
  std::size_t pictures = 0;
};

void add_text(Drawing& drawing, std::string_view name, double x, std::string_view words) {
  drawing.out += fmt::format(R"(<text class="{}" x=")", name);
  add_number(drawing.out, x);
  drawing.out += R"(" y=")";
  add_number(drawing.out, drawing.y);
  drawing.out += fmt::format(R"(">{}</text>)", escaped_markup(words));
}

/// Text in lines of so many letters, half as many where they are wide.
void add_lines(Drawing& drawing, std::string_view name, int x, int columns, int line,
               std::string_view words) {
  const std::string lines = wrapped("", printable(words), columns);
  for (std::size_t begin = 0; begin < lines.size();) {
    const std::size_t end = lines.find('\n', begin);
    drawing.y += line;
    add_text(drawing, name, x, std::string_view(lines).substr(begin, end - begin));
    drawing.out += '\n';
    begin = end + 1;
  }
}

void add_head(Drawing& drawing, std::string_view title, const AnalysedPassage& passage) {
  constexpr int kTitleColumns = 66;
  constexpr int kColumns = 108;
  constexpr int kTitleLine = 22;
  add_lines(drawing, "title", kMargin, kTitleColumns, kTitleLine, title);
  drawing.y += 2;
  add_lines(drawing, "quiet", kMargin, kColumns, kLine, head_line(passage));
  for (const std::string& sentence : opening_sentences(passage)) {
    add_lines(drawing, "quiet", kMargin, kColumns, kLine, sentence);
  }
}

/// Where a system begins on the page.
struct SystemPlace {
  const PagePart& part;
  const PageSystem& system;
  int shift = 0;  ///< from a place along time to a place on the page
};

/// One row of words below the picture; `words_of` gives the words of an event.
template <typename WordsOf>
void add_row(Drawing& drawing, const SystemPlace& place, std::size_t line, std::string_view label,
             std::string_view name, const WordsOf& words_of) {
  drawing.y += kLine;
  if (!label.empty()) add_text(drawing, "name", kMargin + kNames - 6, label);
  for (const Piece& piece : place.system) {
    for (std::size_t i = piece.first_column; i < piece.first_column + piece.column_count; ++i) {
      const auto& shown = place.part.layout.columns[i].events[line];
      const std::string words = shown ? words_of(*shown) : std::string();
      if (words.empty()) continue;
      add_text(drawing, name, place.part.layout.middle_of(i) + place.shift, words);
    }
  }
  drawing.out += '\n';
}

/// The note names, chords with the highest note uppermost and all standing on the lowest row.
void add_notes(Drawing& drawing, const SystemPlace& place, std::size_t line) {
  const std::size_t height = most_notes(place.part, line, place.system);
  for (std::size_t level = height; level-- > 0;) {
    add_row(drawing, place, line, level + 1 == height ? "note" : "", "note",
            [&](const ShownEvent& shown) {
              const std::vector<std::string> cells = note_cells(shown);
              return level < cells.size() ? cells[cells.size() - 1 - level] : std::string();
            });
  }
}

void add_hand(Drawing& drawing, const SystemPlace& place, std::size_t line, HandDrawer& drawer) {
  const HandPicture& picture = drawer.picture();
  const double height = lanes::height(picture.lanes());
  drawing.out += fmt::format(R"(<g class="swing" transform="translate({} )", kMargin);
  add_number(drawing.out, drawing.y);
  drawing.out += ")\">";
  add_lane_names(drawing.out, picture, kNames - 6);
  drawing.out += "</g>\n";
  for (const Piece& piece : place.system) {
    const int begin = place.part.layout.begin_of(piece);
    std::string box = fmt::format(R"( x="{}" y=")", begin + place.shift);
    add_number(box, drawing.y);
    box += fmt::format(R"(" width="{}" height=")", place.part.layout.end_of(piece) - begin);
    add_number(box, height);
    box += '"';
    add_picture(drawing.out, {place.part, line, piece}, drawer, box, ++drawing.pictures);
    drawing.out += '\n';
  }
  drawing.y += height;
  add_notes(drawing, place, line);
  for (const Row row : {Row::rotation, Row::crossing, Row::held, Row::carry, Row::depth}) {
    if (!shows_row(row, place.part, line, place.system)) continue;
    add_row(drawing, place, line, label_of(row), "word", [&](const ShownEvent& shown) {
      return row_cell(row, shown, place.part.lines[line], kUnicodeSigns).text;
    });
  }
}

/// The hand, and the numbers of the bars where they begin.
void add_bar_names(Drawing& drawing, const SystemPlace& place, std::string_view hand) {
  drawing.y += kLine;
  add_text(drawing, "hand", kMargin, hand);
  for (const Piece& piece : place.system) {
    if (piece.goes_on && &piece != &place.system.front()) continue;
    add_text(drawing, "number", place.part.layout.begin_of(piece) + place.shift + 2,
             bar_words(piece));
  }
  drawing.out += '\n';
}

void add_part(Drawing& drawing, const PagePart& part) {
  std::vector<HandDrawer> drawers = drawers_of(part);
  for (const PageSystem& system : part.layout.systems) {
    const int shift = kMargin + kNames - part.layout.begin_of(system.front());
    drawing.y += kBetweenSystems;
    for (std::size_t line = 0; line < part.lines.size(); ++line) {
      if (line > 0) drawing.y += kHalfLine;
      const SystemPlace place{part, system, shift};
      add_bar_names(drawing, place, to_string(part.lines[line].hand()));
      add_hand(drawing, place, line, drawers[line]);
    }
    drawing.hand_on();
  }
}

void add_passage(Drawing& drawing, std::string_view title, const AnalysedPassage& passage) {
  constexpr int kColumns = 108;
  add_head(drawing, title, passage);
  const std::vector<PagePart> parts = page_parts(passage);
  if (parts.size() > 1) {
    add_lines(drawing, "quiet", kMargin, kColumns, kLine, hands_apart_words());
  }
  for (const PagePart& part : parts) add_part(drawing, part);
  drawing.y += kBetweenSystems;
  for (const LineAnalysis& line : passage.found().lines) {
    add_lines(drawing, "word start", kMargin, kColumns, kLine,
              to_string(line.hand) + ": " + totals_words(line.totals));
  }
  drawing.y += kBetweenSystems;
}

/// The samples in two columns, then what needs none.
void add_legend(Drawing& drawing, const AnalysedScore& analysed) {
  constexpr int kColumns = 108;
  constexpr int kWordColumns = 38;
  constexpr int kHalf = (kWidth - 2 * kMargin) / 2;
  const std::vector<LegendSample> samples = picture_legend(analysed);
  for (std::size_t i = 0; i < samples.size(); i += 2) {
    double height = 0;
    const double top = drawing.y;
    for (std::size_t side = 0; side < 2 && i + side < samples.size(); ++side) {
      const LegendSample& sample = samples[i + side];
      const int x = kMargin + static_cast<int>(side) * kHalf;
      std::string box = fmt::format(R"( x="{}" y="{:.0f}" width="{}" height="{}")", x, top,
                                    kSampleWidth, sample_height(sample));
      add_sample(drawing.out, sample, box);
      drawing.y = top + lanes::kRight;
      add_lines(drawing, "word start", x + static_cast<int>(kSampleWidth) + 8, kWordColumns, kLine,
                sample.words);
      height = std::max(height, sample_height(sample));
    }
    drawing.y = top + height;
  }
  for (const std::string_view note : picture_notes(analysed)) {
    add_lines(drawing, "word start", kMargin, kColumns, kLine, note);
  }
}

constexpr std::string_view kPageStyle =
    ".paper{fill:#fff}\n"
    "text{font:12px system-ui,\"Segoe UI\",Roboto,\"DejaVu Sans\",sans-serif;fill:#1c2126}\n"
    ".title{font-size:18px;font-weight:700}\n"
    ".quiet{fill:#555d66}\n"
    ".hand,.number,.note{font-weight:700}\n"
    ".note,.word{text-anchor:middle}\n"
    ".word{font-size:11px}\n"
    ".start{font-size:12px;text-anchor:start}\n"
    ".name{text-anchor:end;fill:#555d66;font-size:11px}\n"
    "@media screen and (prefers-color-scheme:dark){\n"
    ".paper{fill:#14181d}\n"
    "text{fill:#e6e9ec}\n"
    ".quiet,.name{fill:#a9b2bb}\n"
    "}\n";

/// Draws everything but the opening, which tells how high the drawing is: known once it is drawn.
double draw(const AnalysedScore& analysed, const TextSink& sink) {
  constexpr int kColumns = 108;
  Drawing drawing{{sink, {}}};
  for (const AnalysedPassage passage : analysed) {
    add_passage(drawing, title_of(analysed, passage.written()), passage);
  }
  add_legend(drawing, analysed);
  drawing.y += kHalfLine;
  add_lines(drawing, "quiet", kMargin, kColumns, kLine, caution());
  drawing.finish();
  return drawing.y + kMargin;
}

std::string opening(const AnalysedScore& analysed, double height) {
  std::string text = R"(<?xml version="1.0" encoding="UTF-8"?>)"
                     "\n";
  text += fmt::format(
      R"(<svg xmlns="http://www.w3.org/2000/svg" role="group" aria-labelledby="title description" )"
      R"(width="{0}" height="{1:.0f}" viewBox="0 0 {0} {1:.0f}">)"
      "\n",
      kWidth, height);
  text += fmt::format("<title id=\"title\">{}</title>\n", escaped_markup(title_of(analysed)));
  text +=
      "<desc id=\"description\">The forearm's swing through time, system by system: up is to the "
      "right, down to the left.</desc>\n";
  text += fmt::format("<style>\n{}{}</style>\n", kPageStyle, picture_style());
  text += R"(<rect class="paper" width="100%" height="100%"/>)"
          "\n";
  return text;
}

}  // namespace

std::string write_svg(const AnalysedScore& analysed) {
  return text_of(0, [&](TextOut& out) {
    write_svg(analysed, [&](std::string_view piece) { out.add(piece); });
  });
}

void write_svg(const AnalysedScore& analysed, const TextSink& sink) {
  // What is too long to be kept until the height is known is drawn once more.
  constexpr std::size_t kMostKept = std::size_t{1} << 22U;
  std::string kept;
  bool is_whole = true;
  const double height = draw(analysed, [&](std::string_view piece) {
    is_whole = is_whole && kept.size() + piece.size() <= kMostKept;
    if (is_whole) kept += piece;
  });
  sink(opening(analysed, height));
  if (is_whole) {
    sink(kept);
  } else {
    draw(analysed, sink);
  }
  sink("</svg>\n");
}

}  // namespace fingerturn
