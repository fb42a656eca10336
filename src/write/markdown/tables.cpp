#include "write/markdown/tables.hpp"

#include "text/escape.hpp"

#include <string>
#include <string_view>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// A row of a table, its label first; `words_of` gives the words of an event.
template <typename WordsOf>
void add_row(std::string& out, const PagePart& part, std::size_t line, const PageSystem& system,
             std::string_view label, const WordsOf& words_of) {
  out += fmt::format("| {} |", label);
  for (const Piece& piece : system) {
    for (std::size_t i = piece.first_column; i < piece.first_column + piece.column_count; ++i) {
      const auto& shown = part.layout.columns[i].events[line];
      const std::string words = shown ? escaped_markdown(words_of(*shown)) : std::string();
      out += words.empty() ? " |" : " " + words + " |";
    }
  }
  out += '\n';
}

/// Chords from the lowest note up, as they are written in the notation.
std::string joined(const std::vector<std::string>& cells) {
  std::string words;
  for (auto cell = cells.rbegin(); cell != cells.rend(); ++cell) {
    words += (words.empty() ? "" : "+") + *cell;
  }
  return words;
}

/// The first row of a table: the numbers of the bars where they begin.
void add_table_head(std::string& out, const PageSystem& system) {
  std::string names = "| bar |";
  std::string rule = "|---|";
  for (const Piece& piece : system) {
    names += piece.goes_on && &piece != &system.front()
                 ? " |"
                 : fmt::format(fmt::runtime(piece.goes_on ? " ({}) |" : " {} |"), piece.bar);
    rule += ":-:|";
    for (std::size_t i = 1; i < piece.column_count; ++i) {
      names += " |";
      rule += ":-:|";
    }
  }
  out += names + '\n' + rule + '\n';
}

void add_hand(std::string& out, const PagePart& part, std::size_t number,
              const PageSystem& system) {
  const Line& line = part.lines[number].written();
  const std::string hand = part.lines.size() > 1 ? to_string(line.hand) + " " : "";
  add_row(out, part, number, system, hand + "note",
          [](const ShownEvent& shown) { return joined(note_cells(shown)); });
  add_row(out, part, number, system, hand + "finger",
          [&](const ShownEvent& shown) { return joined(finger_cells(shown, line)); });
  for (const Row row : kRows) {
    if (!shows_row(row, part, number, system)) continue;
    add_row(out, part, number, system, label_of(row), [&](const ShownEvent& shown) {
      return row_cell(row, shown, part.lines[number], kUnicodeSigns).text;
    });
  }
}

}  // namespace

void add_tables(TextFlow& flow, const PagePart& part) {
  for (const PageSystem& system : part.layout.systems) {
    flow.out += '\n';
    add_table_head(flow.out, system);
    for (std::size_t i = 0; i < part.lines.size(); ++i) add_hand(flow.out, part, i, system);
    flow.hand_on();
  }
}

void add_legend(std::string& out, const std::vector<LegendEntry>& entries) {
  if (entries.empty()) return;
  out += "\n## Legend\n\n";
  std::string item;
  for (const LegendEntry& entry : entries) {
    if (entry.label.empty()) {
      item += "; " + escaped_markdown(entry.words);
      continue;
    }
    if (!item.empty()) out += item + '\n';
    item = entry.words.empty()
               ? std::string()
               : fmt::format("- {}: {}", entry.label, escaped_markdown(entry.words));
  }
  out += item + '\n';
}

}  // namespace fingerturn
