#include "write/text/grid.hpp"

#include "text/cells.hpp"
#include "write/text/rows.hpp"
#include "write/text/trace.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace fingerturn {
namespace {

/// A bar, or a part of one, that stands in one system.
struct Section {
  std::int32_t bar = 0;
  bool goes_on = false;  ///< the bar began in the system before
  std::vector<Column> columns;
  std::vector<std::size_t> widths;

  [[nodiscard]] std::size_t width() const {
    std::size_t sum = widths.empty() ? 0 : widths.size() - 1;
    for (const std::size_t width : widths) sum += width;
    return sum;
  }
};

using System = std::vector<Section>;

constexpr std::size_t kBetweenBars = 3;  // blank, bar line, blank
/// Columns are at least as wide as the word "single", so that the rows stand evenly.
constexpr std::size_t kEvenWidth = 6;

std::size_t column_width(const Column& column, const SharedLines& lines) {
  std::size_t width = 1;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (!column.events[i]) continue;
    const ShownEvent& shown = *column.events[i];
    width = std::max(width, width_of(shown, lines[i]));
    if (shown.entry != nullptr) width = std::max(width, kEvenWidth);
  }
  return width;
}

std::string bar_name(const Section& section) {
  const std::string name = "bar " + std::to_string(section.bar);
  return section.goes_on ? "(" + name + ")" : name;
}

/// Makes the last column as wide as the name of the bar asks for.
void make_room_for_name(Section& section) {
  const std::size_t name = bar_name(section).size();
  const std::size_t width = section.width();
  if (width < name) section.widths.back() += name - width;
}

Section section_of(const BarColumns& bar, const SharedLines& lines) {
  Section section{bar.bar, false, bar.columns, {}};
  for (const Column& column : bar.columns) section.widths.push_back(column_width(column, lines));
  return section;
}

/// How many columns from `begin` on fit, ending before a beat if one begins among them.
std::size_t fitting_columns(const Section& section, std::size_t begin, std::size_t room) {
  std::size_t count = 0;
  std::size_t used = 0;
  std::size_t at_beat = 0;
  for (std::size_t i = begin; i < section.columns.size(); ++i, ++count) {
    if (count > 0 && section.columns[i].begins_beat) at_beat = count;
    used += section.widths[i] + (count > 0 ? 1 : 0);
    if (used > room) return std::max<std::size_t>(1, at_beat > 0 ? at_beat : count);
  }
  return count;
}

std::vector<Section> divided(const Section& section, std::size_t room) {
  std::vector<Section> parts;
  for (std::size_t begin = 0; begin < section.columns.size();) {
    const std::size_t count = fitting_columns(section, begin, room);
    const auto from = static_cast<std::ptrdiff_t>(begin);
    const auto to = static_cast<std::ptrdiff_t>(begin + count);
    parts.push_back({section.bar,
                     begin > 0,
                     {section.columns.begin() + from, section.columns.begin() + to},
                     {section.widths.begin() + from, section.widths.begin() + to}});
    make_room_for_name(parts.back());
    begin += count;
  }
  return parts;
}

/// Draws one row of a system: `cell_of` gives what stands in a column of a section.
template <typename CellOf>
std::string draw_row(std::string_view label, Emphasis label_emphasis, const System& system,
                     const TextStyle& style, const CellOf& cell_of) {
  const Signs& signs = style.ascii ? kAsciiSigns : kUnicodeSigns;
  std::string row = emphasised(label, label_emphasis, style.colour);
  std::size_t blanks = kLabelWidth - label.size();
  for (std::size_t s = 0; s < system.size(); ++s) {
    if (s > 0) {
      row += std::string(blanks + 1, ' ');
      row += emphasised(signs.bar_line, Emphasis::faint, style.colour);
      blanks = 1;
    }
    const Section& section = system[s];
    for (std::size_t i = 0; i < section.columns.size(); ++i) {
      const Cell cell = cell_of(s, i);
      const std::size_t gap = i + 1 < section.columns.size() ? 1 : 0;
      const std::size_t length = count_cells(cell.text);
      if (length > 0) {
        row += std::string(blanks, ' ');
        row += emphasised(cell.text, cell.emphasis, style.colour);
        blanks = 0;
      }
      blanks += section.widths[i] - std::min(section.widths[i], length) + gap;
    }
  }
  return row + '\n';
}

/// The cells of each column of a system that stand on one another, highest first.
using Stacks = std::vector<std::vector<std::vector<std::string>>>;

template <typename CellsOf>
Stacks stacks_of(const System& system, std::size_t line, const CellsOf& cells_of) {
  Stacks stacks;
  for (const Section& section : system) {
    auto& columns = stacks.emplace_back();
    for (const Column& column : section.columns) {
      const auto& shown = column.events[line];
      columns.push_back(shown ? cells_of(*shown) : std::vector<std::string>{});
    }
  }
  return stacks;
}

std::size_t height_of(const Stacks& stacks) {
  std::size_t height = 1;
  for (const auto& columns : stacks) {
    for (const auto& cells : columns) height = std::max(height, cells.size());
  }
  return height;
}

/// Draws stacked cells, all standing on the lowest row.
std::string draw_stacks(std::string_view label, const Stacks& stacks, const System& system,
                        const TextStyle& style, Emphasis emphasis) {
  std::string rows;
  for (std::size_t height = height_of(stacks), level = height; level-- > 0;) {
    const auto cell = [&](std::size_t section, std::size_t i) -> Cell {
      const std::vector<std::string>& cells = stacks[section][i];
      if (level >= cells.size()) return {};
      return {cells[cells.size() - 1 - level], emphasis};
    };
    rows += draw_row(level + 1 == height ? label : "", Emphasis::faint, system, style, cell);
  }
  return rows;
}

/// Whether the hand strikes anything in a system; where it rests, only its notes are shown.
bool strikes(const System& system, std::size_t number) {
  for (const Section& section : system) {
    for (const Column& column : section.columns) {
      const auto& shown = column.events[number];
      if (shown && shown->entry != nullptr) return true;
    }
  }
  return false;
}

bool is_about_turns(Row row) {
  // The way a double swings first is the other way than it plays.
  return row == Row::rotation || row == Row::play || row == Row::crossing;
}

bool says_something(Row row, const System& system, std::size_t number, const AnalysedLine& line) {
  for (const Section& section : system) {
    for (const Column& column : section.columns) {
      const auto& shown = column.events[number];
      if (shown && says_something(row_cell(row, *shown, line, kUnicodeSigns))) return true;
    }
  }
  return false;
}

/// The row with the hand and the numbers of the bars.
std::string draw_bar_names(std::string_view hand, const System& system, const TextStyle& style) {
  System one_column_bars;
  for (const Section& section : system) {
    one_column_bars.push_back({section.bar, section.goes_on, {{}}, {section.width()}});
  }
  return draw_row(hand, Emphasis::strong, one_column_bars, style,
                  [&](std::size_t section, std::size_t) -> Cell {
                    return {bar_name(system[section]), Emphasis::strong};
                  });
}

/// Whether the drawing of the swing tells what a row says.
bool drawn_by_trace(Row row) {
  return row == Row::prepare || row == Row::play || row == Row::forearm;
}

std::string draw_trace(const Line& line, std::size_t number, const System& system,
                       const TextStyle& style) {
  std::string rows;
  for (const Track track : kTracks) {
    rows += draw_row(label_of(track), Emphasis::faint, system, style,
                     [&](std::size_t section, std::size_t i) -> Cell {
                       const auto& shown = system[section].columns[i].events[number];
                       return shown ? trace_cell(track, *shown, line, style.ascii) : Cell{};
                     });
  }
  return rows;
}

std::string draw_hand(const SharedLines& lines, std::size_t number, const System& system,
                      const TextStyle& style) {
  const Signs& signs = style.ascii ? kAsciiSigns : kUnicodeSigns;
  const Line& line = lines[number].written();
  std::string rows = draw_bar_names(to_string(line.hand), system, style);
  const Stacks notes = stacks_of(system, number, note_cells);
  rows += draw_stacks("note", notes, system, style, Emphasis::strong);
  if (!strikes(system, number)) return rows;
  const Stacks fingers =
      stacks_of(system, number, [&](const ShownEvent& shown) { return finger_cells(shown, line); });
  rows += draw_stacks("finger", fingers, system, style, Emphasis::plain);
  if (style.trace) rows += draw_trace(line, number, system, style);
  for (const Row row : kRows) {
    if (style.trace && drawn_by_trace(row)) continue;
    if (style.few_rows && !is_about_turns(row)) continue;
    if (!says_something(row, system, number, lines[number])) continue;
    rows += draw_row(label_of(row), Emphasis::faint, system, style,
                     [&](std::size_t section, std::size_t i) -> Cell {
                       const auto& shown = system[section].columns[i].events[number];
                       return shown ? row_cell(row, *shown, lines[number], signs) : Cell{};
                     });
  }
  return rows;
}

void draw_system(TextOut& out, const SharedLines& lines, const System& system,
                 const TextStyle& style) {
  out.add('\n');
  for (std::size_t number = 0; number < lines.size(); ++number) {
    out.add(draw_hand(lines, number, system, style));
  }
}

}  // namespace

void draw_systems(TextOut& out, const BarSequence& bars, const TextStyle& style) {
  const std::size_t room =
      static_cast<std::size_t>(std::max(style.columns, kFewestColumns)) - kLabelWidth;
  System system;
  std::size_t used = 0;
  for (std::size_t i = 0; i < bars.size(); ++i) {
    for (Section& section : divided(section_of(bars[i], bars.lines()), room)) {
      const bool fits =
          !system.empty() && !section.goes_on && used + kBetweenBars + section.width() <= room;
      if (!fits && !system.empty())
        draw_system(out, bars.lines(), std::exchange(system, {}), style);
      used = fits ? used + kBetweenBars + section.width() : section.width();
      system.push_back(std::move(section));
    }
  }
  if (!system.empty()) draw_system(out, bars.lines(), system, style);
}

}  // namespace fingerturn
