#include "fingerturn/check.hpp"
#include "fingerturn/report.hpp"
#include "text/cells.hpp"
#include "text/numbers.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"
#include "text/wrap.hpp"

#include <algorithm>
#include <array>
#include <numeric>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

using Counted = std::size_t (*)(const CheckCounts&);

/// A column of the table: its head, what the legend says of it, and what it counts.
struct Column {
  std::string_view head;
  std::string_view meaning;
  Counted counted;
  bool always = false;  ///< it stands there even if it counts nothing in any file
};

constexpr std::string_view kFingers = "fingers";
constexpr std::string_view kNotRead = " could not be read";

constexpr std::array<Column, 11> kColumns{{
    {"events", "notes, double notes and chords that a hand strikes",
     [](const CheckCounts& counts) { return counts.events; }, true},
    {kFingers, "how many of them have all their fingers",
     [](const CheckCounts& counts) { return counts.fingered; }, true},
    {"prep", "preparatory", [](const CheckCounts& counts) { return counts.preparatory; }, true},
    {"single", "", [](const CheckCounts& counts) { return counts.single_rotations; }, true},
    {"double", "", [](const CheckCounts& counts) { return counts.double_rotations; }, true},
    {"level", "", [](const CheckCounts& counts) { return counts.level_events; }},
    {"?", "undetermined", [](const CheckCounts& counts) { return counts.undetermined; }},
    {"cross", "fingers that pass one another",
     [](const CheckCounts& counts) { return counts.crossings; }, true},
    {"info", "", [](const CheckCounts& counts) { return counts.watch.info; }},
    {"caution", "", [](const CheckCounts& counts) { return counts.watch.caution; }},
    {"strain", "", [](const CheckCounts& counts) { return counts.watch.strain; }},
}};

std::string cell_text(const Column& column, const CheckCounts& counts) {
  const std::size_t count = column.counted(counts);
  return column.head == kFingers ? share_text(count, counts.events) : std::to_string(count);
}

/// The columns that stand side by side and how wide each is, the gap before it included.
struct Table {
  std::string_view folder;  ///< the one that all files are in; empty where there is none
  std::vector<const Column*> columns;
  std::vector<std::size_t> widths;
  std::size_t name_width = 0;
};

std::string all_words(const AllCounts& all) {
  return all.read == 1 ? "1 file" : fmt::format("{} files", all.read);
}

/// The folders that all names begin with, to the last stroke.
std::string_view shared_folder(std::span<const FileCounts> files) {
  if (files.empty()) return {};
  std::string_view shared = files.front().source;
  for (const FileCounts& file : files) {
    const auto differs =
        std::mismatch(shared.begin(), shared.end(), file.source.begin(), file.source.end());
    shared = shared.substr(0, static_cast<std::size_t>(differs.first - shared.begin()));
  }
  return shared.substr(0, shared.find_last_of('/') + 1);
}

void choose_columns(Table& table, const CheckCounts& all) {
  constexpr std::size_t kGap = 1;
  constexpr std::size_t kNarrowest = 2;
  for (const Column& column : kColumns) {
    if (!column.always && column.counted(all) == 0) continue;
    table.columns.push_back(&column);
    // No file's number is longer than that for all, and "100%" is shorter than its head.
    const std::size_t digits = cell_text(column, all).size();
    table.widths.push_back(kGap + std::max({column.head.size(), digits, kNarrowest}));
  }
}

std::size_t width_of(const Table& table) {
  return std::accumulate(table.widths.begin(), table.widths.end(), std::size_t{0});
}

/// How much of the room names are given: as much as those that fit into it need.
std::size_t name_width(const Table& table, std::span<const FileCounts> files, const AllCounts& all,
                       std::size_t room) {
  std::size_t width = std::max(all_words(all).size(), count_cells(table.folder));
  for (const FileCounts& file : files) {
    const std::size_t length = count_cells(file.source.substr(table.folder.size()));
    if (length <= room) width = std::max(width, length);
  }
  return std::min(width, room);
}

/// The columns in tables that are no wider than `limit` without their names.
std::vector<Table> parts_of(const Table& whole, std::size_t limit) {
  const Table empty{whole.folder, {}, {}, whole.name_width};
  std::vector<Table> parts{empty};
  for (std::size_t i = 0; i < whole.columns.size(); ++i) {
    const bool has_room = width_of(parts.back()) + whole.widths[i] <= limit;
    if (!has_room && !parts.back().columns.empty()) parts.push_back(empty);
    parts.back().columns.push_back(whole.columns[i]);
    parts.back().widths.push_back(whole.widths[i]);
  }
  return parts;
}

/// As few tables as there can be, each about as wide as the others.
std::vector<Table> equal_parts_of(const Table& whole, std::size_t limit) {
  std::vector<Table> parts = parts_of(whole, limit);
  while (limit > 0) {
    std::vector<Table> narrower = parts_of(whole, --limit);
    if (narrower.size() > parts.size()) break;
    parts = std::move(narrower);
  }
  return parts;
}

/// One table, or several below one another where one would be too wide.
std::vector<Table> tables_for(std::span<const FileCounts> files, const AllCounts& all,
                              std::size_t columns) {
  Table table;
  table.folder = shared_folder(files);
  choose_columns(table, all.counts);
  const std::size_t used = width_of(table);
  if (used + all_words(all).size() <= columns) {
    table.name_width = name_width(table, files, all, columns - used);
    return {table};
  }
  // Names have two fifths at first, so that the numbers of several columns stand beside them, then
  // all that the widest part leaves.
  table.name_width = name_width(table, files, all, columns * 2 / 5);
  std::vector<Table> parts = equal_parts_of(table, columns - table.name_width);
  std::size_t widest = kNotRead.size();
  for (const Table& part : parts) widest = std::max(widest, width_of(part));
  const std::size_t room = columns - std::min(widest, columns);
  for (Table& part : parts) part.name_width = name_width(table, files, all, room);
  return parts;
}

std::string aligned(std::string_view text, std::size_t width) {
  return std::string(width - std::min(width, text.size()), ' ') + std::string(text);
}

/// A name with what stands beside it, or below it where the name is too long.
std::string row(const Table& table, const std::string& name, const std::string& cells) {
  if (count_cells(name) <= table.name_width) {
    return padded(name, table.name_width) + cells + '\n';
  }
  return name + '\n' + std::string(table.name_width, ' ') + cells + '\n';
}

std::string counts_row(const Table& table, const std::string& name, const CheckCounts& counts) {
  std::string cells;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    cells += aligned(cell_text(*table.columns[i], counts), table.widths[i]);
  }
  return row(table, name, cells);
}

std::string file_row(const Table& table, const FileCounts& file, bool is_first_table) {
  const std::string name = printable(file.source.substr(table.folder.size()));
  if (file.ok()) return counts_row(table, name, file.counts);
  return is_first_table ? row(table, name, std::string(kNotRead)) : "";
}

std::string head_row(const Table& table) {
  std::string heads;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    heads += aligned(table.columns[i]->head, table.widths[i]);
  }
  return row(table, printable(table.folder), heads);
}

std::string table_text(const Table& table, std::span<const FileCounts> files, const AllCounts& all,
                       bool is_first_table) {
  std::string text = head_row(table);
  for (const FileCounts& file : files) text += file_row(table, file, is_first_table);
  return files.size() > 1 ? text + counts_row(table, all_words(all), all.counts) : text;
}

std::string legend_of(const std::vector<Table>& tables, const CheckCounts& all, int columns) {
  std::string words;
  for (const Table& table : tables) {
    for (const Column* column : table.columns) {
      if (column->meaning.empty()) continue;
      words += fmt::format("{}{} = {}", words.empty() ? "" : "; ", column->head, column->meaning);
    }
  }
  if (all.watch.reaches(WatchLevel::info)) words += "; then the findings of each level";
  return wrapped("", words, columns);
}

/// "Looked for twist and leap only."; nothing where all was looked for.
std::string choice_words(const CheckChoice& choice) {
  std::string words;
  if (!choice.only.empty()) words = fmt::format("looked for {} only", enumerated(choice.only));
  if (!choice.leave_out.empty()) {
    words +=
        fmt::format("{}not looked for {}", words.empty() ? "" : ", ", enumerated(choice.leave_out));
  }
  return words.empty() ? words : sentence_of(std::move(words));
}

}  // namespace

std::string write_counts(std::span<const FileCounts> files, const AllCounts& all, int columns,
                         const CheckChoice& choice) {
  const int width = std::max(columns, kFewestColumns);
  const std::vector<Table> tables = tables_for(files, all, static_cast<std::size_t>(width));
  std::string text;
  for (const Table& table : tables) {
    const bool is_first = text.empty();
    text += (is_first ? "" : "\n") + table_text(table, files, all, is_first);
  }
  text += "\nlegend\n" + legend_of(tables, all.counts, width);
  if (const std::string words = choice_words(choice); !words.empty()) {
    text += wrapped("", words, width);
  }

  return text + "\ncaution\n" + wrapped("", caution(), width);
}

}  // namespace fingerturn
