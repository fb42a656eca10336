#include "fingerturn/report.hpp"
#include "text/escape.hpp"
#include "text/text_out.hpp"
#include "text/utf8.hpp"
#include "text/wrap.hpp"
#include "write/page/ink/ink_svg.hpp"
#include "write/page/legend_line.hpp"
#include "write/page/music.hpp"
#include "write/shared/passage_words.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include <fmt/core.h>

/// The music alone, on sheets of paper below one another. Lengths are staff spaces.
namespace fingerturn {
namespace {

constexpr double kMargin = 7.5;  // 12 mm
constexpr double kBetweenSheets = 4;
constexpr double kBetweenSystems = 2.2;
constexpr double kTitle = 3.2;
constexpr double kText = 1.8;
constexpr double kLine = 2.6;
constexpr double kFoot = 4;  // what the line at the foot of a sheet takes

/// A sheet of paper, in staff spaces.
struct Sheet {
  double width = 0;
  double height = 0;

  /// Between the margins.
  [[nodiscard]] double music() const { return width - 2 * kMargin; }
  /// How many letters stand beside one another in text and titles.
  [[nodiscard]] int columns() const { return static_cast<int>(music()); }
  [[nodiscard]] int title_columns() const { return static_cast<int>(music() * kText / kTitle) - 9; }
  [[nodiscard]] double top_of(std::size_t sheet) const {
    return static_cast<double>(sheet) * (height + kBetweenSheets);
  }
};

/// ISO 216 and, for Letter, ANSI Y14.1, in millimetres; from memory.
Sheet sheet_of(Paper paper) {
  const auto sheet = [](double width, double height) {
    return Sheet{width / kStaffSpace, height / kStaffSpace};
  };
  switch (paper) {
    case Paper::a4_landscape:
      return sheet(297, 210);
    case Paper::letter:
      return sheet(215.9, 279.4);
    case Paper::letter_landscape:
      return sheet(279.4, 215.9);
    case Paper::a4:
      break;
  }
  return sheet(210, 297);
}

/// How many sheets there are, and how high they are.
struct SheetSizes {
  std::size_t count = 0;
  double height = 0;
};

/// Sheets that fill from above.
class Sheets : public TextFlow {
 public:
  Sheets(const TextSink& to, std::string title, const Sheet& sheet)
      : TextFlow{to, {}}, title_(std::move(title)), sheet_(sheet) {
    begin_sheet();
  }

  [[nodiscard]] const Sheet& sheet() const noexcept { return sheet_; }

  void add(Inks inks, double height, double gap) {
    if (y_ > kMargin && y_ + gap + height > sheet_.height - kMargin - kFoot) begin_sheet();
    if (y_ > kMargin) y_ += gap;
    move_all(inks, kMargin, y_);
    add_inks(out, inks, used_, Repeats::references);
    out += '\n';
    y_ += height;
    hand_on();
  }

  /// Words in lines of so many letters, half as many where they are wide.
  void add_words(std::string_view words, double size, int columns, InkStyle style) {
    const std::string lines = wrapped("", printable(words), columns);
    for (std::size_t begin = 0; begin < lines.size();) {
      const std::size_t end = lines.find('\n', begin);
      const double height = size * kLine / kText;
      add({text_ink(InkKind::words, {lines.substr(begin, end - begin), {0, 0.8 * height}, size},
                    style)},
          height, 0);
      begin = end + 1;
    }
  }

  void add_room(double height) { y_ += height; }

  /// Where all is on one sheet, that is no longer than it need be.
  SheetSizes end() {
    SheetSizes sizes{count_, sheet_.height};
    if (count_ == 1) sizes.height = std::min(sheet_.height, y_ + kFoot + kMargin);
    end_sheet(sizes.height);
    finish();
    return sizes;
  }

  [[nodiscard]] const GlyphsUsed& used() const noexcept { return used_; }

 private:
  void begin_sheet() {
    if (count_ > 0) end_sheet(sheet_.height);
    out += fmt::format("<g transform=\"translate(0 {:.2f})\">\n", sheet_.top_of(count_));
    ++count_;
    y_ = kMargin;
  }

  void end_sheet(double height) {
    constexpr std::size_t kLongest = 60;
    std::string title = title_;
    if (title.size() > kLongest) title = wrapped("", title, static_cast<int>(kLongest));
    title.resize(std::min(title.size(), title.find('\n')));
    const double y = height - kMargin;
    const double right = sheet_.width - kMargin;
    const Inks foot{
        text_ink(InkKind::words, {title, {kMargin, y}, kText}, InkStyle::quiet),
        text_ink(InkKind::words, {std::to_string(count_), {right, y}, kText, Anchor::end},
                 InkStyle::quiet)};
    add_inks(out, foot, used_, Repeats::references);
    out += "</g>\n";
  }

  std::string title_;
  Sheet sheet_;
  GlyphsUsed used_;
  std::size_t count_ = 0;
  double y_ = kMargin;
};

void add_watch_list(Sheets& sheets, const PageWatchList& list, bool names_hand) {
  if (list.items.empty()) return;
  sheets.add_room(kLine);
  for (std::size_t i = 0; i < list.items.size(); ++i) {
    const WatchItem& item = list.items[i];
    const std::string hand = names_hand ? to_string(item.hand) + " hand, " : "";
    sheets.add_words(fmt::format("{}. {}{} ({}): {}", i + 1, hand, bars_words(item.told.bars),
                                 name_of(item.told.finding->level), item.told.message),
                     kText, sheets.sheet().columns(), InkStyle::plain);
  }
}

void add_passage(Sheets& sheets, const AnalysedScore& analysed, const AnalysedPassage& passage,
                 const MusicStyle& style) {
  const int columns = sheets.sheet().columns();
  sheets.add_words(title_of(analysed, passage.written()), kTitle, sheets.sheet().title_columns(),
                   InkStyle::strong);
  sheets.add_words(head_line(passage), kText, columns, InkStyle::quiet);
  for (const std::string& sentence : opening_sentences(passage)) {
    sheets.add_words(sentence, kText, columns, InkStyle::quiet);
  }
  if (has_no_places(passage)) return;
  const PageWatchList list = watch_list_of(passage);
  const std::vector<MusicPart> parts = music_parts(passage, list);
  if (parts.size() > 1) sheets.add_words(hands_apart_words(), kText, columns, InkStyle::quiet);
  for (const MusicPart& part : parts) {
    SystemMaker maker(passage, part.lines, part.watch, sheets.sheet().music(), style);
    while (std::optional<System> system = maker.next()) {
      sheets.add(std::move(system->inks), system->height, kBetweenSystems);
    }
  }
  add_watch_list(sheets, list, passage.size() > 1);
  sheets.add_room(kLine);
}

void add_legend(Sheets& sheets, const AnalysedScore& analysed) {
  constexpr double kRowHeight = 3.2;
  constexpr double kGap = 0.8;
  constexpr double kBetween = 3;
  Inks row;
  double x = 0;
  const auto end_row = [&] {
    if (!row.empty()) sheets.add(std::exchange(row, {}), kRowHeight, 0);
    x = 0;
  };
  for (LegendDrawing& drawing : legend_drawings(used_in(analysed))) {
    const double width = drawing.width + kGap + text_width(drawing.words, kText);
    if (x > 0 && x + width > sheets.sheet().music()) end_row();
    move_all(drawing.inks, x, 0);
    append(row, std::move(drawing.inks));
    row.push_back(text_ink(InkKind::words,
                           {std::string(drawing.words), {x + drawing.width + kGap, 2.1}, kText}));
    x += width + kBetween;
  }
  end_row();
}

constexpr std::string_view kSheetStyle =
    ".paper{fill:#fff;stroke:none}\n"
    "@media screen and (prefers-color-scheme:dark){.music .paper{fill:#14181d}}\n";

/// What is known once all is drawn: how high the drawing is, and which outlines it uses.
struct Drawn {
  SheetSizes sheets;
  GlyphsUsed used;
};

/// Draws everything but the opening, which tells those.
Drawn draw(const AnalysedScore& analysed, const SheetStyle& style, const TextSink& sink) {
  Sheets sheets(sink, printable(title_of(analysed)), sheet_of(style.paper));
  for (const AnalysedPassage passage : analysed) {
    add_passage(sheets, analysed, passage, style.music);
  }
  add_legend(sheets, analysed);
  sheets.add_words(caution(), kText, sheets.sheet().columns(), InkStyle::quiet);
  const SheetSizes sizes = sheets.end();
  return {sizes, sheets.used()};
}

std::string opening(const AnalysedScore& analysed, const Sheet& paper, const Drawn& drawn) {
  const double height = paper.top_of(drawn.sheets.count - 1) + drawn.sheets.height;
  std::string text = R"(<?xml version="1.0" encoding="UTF-8"?>)"
                     "\n";
  text += fmt::format(R"(<svg xmlns="http://www.w3.org/2000/svg" class="music" role="img" )"
                      R"(aria-labelledby="title description" width="{:.1f}mm" height="{:.1f}mm" )"
                      R"(viewBox="0 0 {:.2f} {:.2f}">)"
                      "\n",
                      paper.width * kStaffSpace, height * kStaffSpace, paper.width, height);
  text += fmt::format("<title id=\"title\">{}</title>\n", escaped_markup(title_of(analysed)));
  text +=
      "<desc id=\"description\">The music, and beside each staff the forearm's swing through time "
      "with the fingers: up is to the right, down to the left.</desc>\n";
  text += fmt::format("<style>\n{}{}</style>\n<defs>\n", ink_style(), kSheetStyle);
  add_outlines(text, drawn.used);
  text += "</defs>\n";
  for (std::size_t sheet = 0; sheet < drawn.sheets.count; ++sheet) {
    text += fmt::format("<rect class=\"paper\" y=\"{:.2f}\" width=\"{}\" height=\"{:.2f}\"/>\n",
                        paper.top_of(sheet), paper.width, drawn.sheets.height);
  }
  return text;
}

}  // namespace

std::string write_svg(const AnalysedScore& analysed, const SheetStyle& style) {
  return text_of(0, [&](TextOut& out) {
    write_svg(analysed, style, [&](std::string_view piece) { out.add(piece); });
  });
}

void write_svg(const AnalysedScore& analysed, const SheetStyle& style, const TextSink& sink) {
  // What is too long to be kept until the height is known is drawn once more.
  constexpr std::size_t kMostKept = std::size_t{1} << 22U;
  std::string kept;
  bool is_whole = true;
  const Drawn drawn = draw(analysed, style, [&](std::string_view piece) {
    is_whole = is_whole && kept.size() + piece.size() <= kMostKept;
    if (is_whole) kept += piece;
  });
  sink(opening(analysed, sheet_of(style.paper), drawn));
  if (is_whole) {
    sink(kept);
  } else {
    draw(analysed, style, sink);
  }
  sink("</svg>\n");
}

}  // namespace fingerturn
