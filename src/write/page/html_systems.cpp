#include "write/page/html_systems.hpp"

#include "text/escape.hpp"
#include "write/page/svg_frame.hpp"
#include "write/page/svg_picture.hpp"

#include <algorithm>
#include <iterator>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr double kUnitsInEm = 12;

/// A length of the picture in em, to two decimals.
std::string em(double units) { return fmt::format("{:.2f}em", units / kUnitsInEm); }

std::string box(double width, double height) {
  return fmt::format(R"( style="width:{};height:{}")", em(width), em(height));
}

std::string_view class_of(Row row, const EventAnalysis& entry) {
  if (row != Row::rotation) return {};
  switch (entry.rotation) {
    case Rotation::preparatory:
      return R"( class="opened")";
    case Rotation::double_rotation:
    case Rotation::single_rotation:
    case Rotation::level:
    case Rotation::undetermined:
      break;
  }
  return {};
}

/// One cell for each column of a piece; `add_cell` fills those where the hand has an event.
template <typename AddCell>
void add_cells(std::string& out, const PagePart& part, std::size_t line, const Piece& piece,
               const AddCell& add_cell) {
  for (std::size_t i = piece.first_column; i < piece.first_column + piece.column_count; ++i) {
    const auto& shown = part.layout.columns[i].events[line];
    if (shown) {
      add_cell(*shown);
    } else {
      out += "<td></td>";
    }
  }
}

/// Words on one another, the uppermost first.
void add_stack(std::string& out, const std::vector<std::string>& words) {
  out += "<td>";
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += "<br/>";
    out += escaped_markup(words[i]);
  }
  out += "</td>";
}

/// Rows of one system are equally high in all its pieces, which on a wide page stand side by side.
void begin_row(std::string& out, std::string_view name, std::string_view label,
               std::size_t lines = 1) {
  if (lines > 1) {
    out += fmt::format(R"(<tr class="{} stacked" style="--lines:{}">)", name, lines);
  } else {
    out += fmt::format(R"(<tr class="{}">)", name);
  }
  out += fmt::format(R"(<th scope="row"><span>{}</span></th>)", label);
}

void add_written_rows(std::string& out, const PagePart& part, std::size_t line, const Piece& piece,
                      std::size_t notes) {
  begin_row(out, "note", "note", notes);
  add_cells(out, part, line, piece,
            [&](const ShownEvent& shown) { add_stack(out, note_cells(shown)); });
  out += "</tr>";
  begin_row(out, "finger", "finger", notes);
  add_cells(out, part, line, piece, [&](const ShownEvent& shown) {
    add_stack(out, finger_cells(shown, part.lines[line].written()));
  });
  out += "</tr>\n";
}

void add_found_row(std::string& out, Row row, const PagePart& part, std::size_t line,
                   const Piece& piece) {
  const bool blank = !shows_row(row, part, line, {piece});
  begin_row(out, blank ? "word blank" : "word", label_of(row));
  add_cells(out, part, line, piece, [&](const ShownEvent& shown) {
    const Cell cell = row_cell(row, shown, part.lines[line], kUnicodeSigns);
    out += "<td";
    if (shown.entry != nullptr) out += class_of(row, *shown.entry);
    out += '>';
    out += escaped_markup(cell.text);
    out += "</td>";
  });
  out += "</tr>";
}

void add_picture_row(HtmlPage& page, const PagePart& part, std::size_t line, const Piece& piece,
                     HandDrawer& drawer) {
  constexpr double kNames = 57;
  constexpr double kGap = 5;
  const HandPicture& picture = drawer.picture();
  const double height = lanes::height(picture.lanes());
  page.out += fmt::format(
      R"(<tr class="swing-row"><th scope="row"><span class="hidden">swing of the {} hand</span>)"
      R"(<svg class="swing" aria-hidden="true"{} viewBox="0 0 {} {}">)",
      to_string(picture.hand()), box(kNames, height), kNames, height);
  add_lane_names(page.out, picture, kNames - kGap);
  page.out += fmt::format(R"(</svg></th><td colspan="{}">)", piece.column_count);
  // As wide as the cell to the last hair, so that the pictures of a system meet.
  const std::string place =
      fmt::format(R"( style="width:100%;height:{}" preserveAspectRatio="none")", em(height));
  add_picture(page.out, {part, line, piece}, drawer, place, ++page.pictures);
  page.out += "</td></tr>\n";
}

/// What a system shows of a hand.
struct HandRows {
  std::vector<Row> found;
  std::size_t notes = 1;  ///< the most notes on one another
};
using SystemRows = std::vector<HandRows>;

SystemRows rows_of(const PagePart& part, const PageSystem& system) {
  SystemRows rows;
  for (std::size_t line = 0; line < part.lines.size(); ++line) {
    auto& shown = rows.emplace_back();
    std::copy_if(kPageRows.begin(), kPageRows.end(), std::back_inserter(shown.found),
                 [&](Row row) { return shows_row(row, part, line, system); });
    shown.notes = most_notes(part, line, system);
  }
  return rows;
}

void add_columns(std::string& out, const PagePart& part, const Piece& piece) {
  out += R"(<colgroup><col class="names"/>)";
  for (std::size_t i = piece.first_column; i < piece.first_column + piece.column_count; ++i) {
    out += fmt::format(R"(<col style="width:{}"/>)",
                       em(part.layout.edges[i + 1] - part.layout.edges[i]));
  }
  out += "</colgroup>\n";
}

void add_piece(HtmlPage& page, const PagePart& part, const Piece& piece, const SystemRows& rows,
               std::vector<HandDrawer>& drawers) {
  const int width = part.layout.end_of(piece) - part.layout.begin_of(piece);
  page.out +=
      fmt::format(R"(<table class="piece" style="--notes:{}"><caption{}><span>{}</span></caption>)",
                  em(width), piece.goes_on ? R"( class="on")" : "", bar_words(piece));
  add_columns(page.out, part, piece);
  for (std::size_t line = 0; line < part.lines.size(); ++line) {
    page.out += "<tbody>";
    if (part.lines.size() > 1) {
      page.out += fmt::format(
          R"(<tr class="hand-row"><th class="hand" scope="rowgroup" colspan="{}"><span>{} hand</span></th></tr>)",
          piece.column_count + 1, to_string(part.lines[line].hand()));
    }
    add_picture_row(page, part, line, piece, drawers[line]);
    add_written_rows(page.out, part, line, piece, rows[line].notes);
    for (const Row row : rows[line].found) add_found_row(page.out, row, part, line, piece);
    page.out += "</tbody>\n";
  }
  // No blank between the tables, so that their pictures touch.
  page.out += "</table>";
}

}  // namespace

void add_systems(HtmlPage& page, const PagePart& part) {
  std::vector<HandDrawer> drawers = drawers_of(part);
  for (const PageSystem& system : part.layout.systems) {
    const SystemRows rows = rows_of(part, system);
    page.out += "<div class=\"system\">";
    for (const Piece& piece : system) add_piece(page, part, piece, rows, drawers);
    page.out += "</div>\n";
    page.hand_on();
  }
}

}  // namespace fingerturn
