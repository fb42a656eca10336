#include "write/text/rows_reading.hpp"

#include "text/utf8.hpp"

#include <algorithm>
#include <iterator>

namespace fingerturn::tests {
namespace {

constexpr std::size_t kLabelColumns = 10;

bool is_bar_line(const std::string& text) { return text == "|" || text == "\u2502"; }

std::vector<ReportCell> cells_of(std::string_view line) {
  std::vector<ReportCell> cells;
  std::size_t column = 0;
  bool in_cell = false;
  while (!line.empty()) {
    const std::size_t bytes = first_code_point(line).bytes;
    const bool blank = line.front() == ' ';
    if (!blank && !in_cell) cells.push_back({column, {}});
    if (!blank) cells.back().text += line.substr(0, bytes);
    in_cell = !blank;
    line.remove_prefix(bytes);
    ++column;
  }
  return cells;
}

ReportRow row_of(const std::string& line) {
  ReportRow row{{}, cells_of(line)};
  if (!row.cells.empty() && row.cells.front().column == 0) {
    row.label = row.cells.front().text;
    row.cells.erase(row.cells.begin());
  }
  return row;
}

bool begins_block(const std::string& line) {
  const std::string label = line.substr(0, line.find(' '));
  if (label != "right" && label != "left") return false;
  const std::size_t words = line.find_first_not_of(' ', label.size());
  return words == kLabelColumns &&
         (line.compare(words, 4, "bar ") == 0 || line.compare(words, 5, "(bar ") == 0);
}

}  // namespace

std::vector<std::size_t> ReportRow::bar_line_columns() const {
  std::vector<std::size_t> columns;
  for (const ReportCell& cell : cells) {
    if (is_bar_line(cell.text)) columns.push_back(cell.column);
  }
  return columns;
}

std::vector<ReportCell> ReportRow::entries() const {
  std::vector<ReportCell> entries;
  std::copy_if(cells.begin(), cells.end(), std::back_inserter(entries),
               [](const ReportCell& cell) { return !is_bar_line(cell.text); });
  return entries;
}

std::vector<ReportRow> ReportBlock::rows_of(std::string_view label) const {
  std::vector<ReportRow> found;
  bool below = false;
  for (const ReportRow& row : rows) {
    below = row.label.empty() ? below : row.label == label;
    if (below) found.push_back(row);
  }
  return found;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    lines.push_back(text.substr(begin, end - begin));
    begin = end + 1;
  }
  return lines;
}

std::vector<ReportBlock> blocks_of(const std::string& report) {
  std::vector<ReportBlock> blocks;
  std::size_t system = 0;
  bool in_block = false;
  for (const std::string& line : lines_of(report)) {
    if (line == "totals") break;
    if (begins_block(line)) {
      blocks.push_back({line.substr(0, line.find(' ')), system, {}});
      in_block = true;
    } else if (line.empty()) {
      if (in_block) ++system;
      in_block = false;
    }
    if (in_block) blocks.back().rows.push_back(row_of(line));
  }
  return blocks;
}

std::string without_colours(const std::string& text) {
  std::string plain;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text.compare(at, 2, "\x1B[") == 0) {
      at = text.find('m', at);
      if (at == std::string::npos) break;
    } else {
      plain += text[at];
    }
  }
  return plain;
}

}  // namespace fingerturn::tests
