#include "write/compare/table.hpp"

#include "text/numbers.hpp"
#include "write/compare/blocks.hpp"
#include "write/text/signs.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr std::string_view kUnknown = "-";
constexpr std::string_view kNone = "0";
constexpr std::size_t kLabel = 15;

using CellOf = std::string (*)(const HandResult&);

/// A row of the table. One that is not always there is left out where it would say nothing.
struct Number {
  std::string_view label;
  CellOf cell;
  bool always = false;
};

template <std::size_t Totals::*Count>
std::string count_cell(const HandResult& result) {
  return std::to_string(result.totals.*Count);
}

template <double Totals::*Number>
std::string number_cell(const HandResult& result) {
  return fmt::format("{}", result.totals.*Number);
}

template <std::size_t WatchCounts::*Count>
std::string level_cell(const HandResult& result) {
  return std::to_string(result.watch.*Count);
}

std::string difficulty_cell(const HandResult& result) {
  return result.difficulty ? fmt::format("{:.1f}", *result.difficulty) : std::string(kUnknown);
}

std::string tempo_cell(const HandResult& result) {
  const std::optional<double>& tempo = result.totals.full_swing_tempo;
  return tempo ? tempo_not_above(*tempo) : std::string(kUnknown);
}

constexpr std::array<Number, 16> kNumbers{{
    {"difficulty", difficulty_cell, true},
    {"preparatory", count_cell<&Totals::preparatory>, true},
    {"single", count_cell<&Totals::single_rotations>, true},
    {"double", count_cell<&Totals::double_rotations>, true},
    {"level", count_cell<&Totals::level_events>},
    {"undetermined", count_cell<&Totals::undetermined>},
    {"swings", count_cell<&Totals::swings>, true},
    {"crossings", count_cell<&Totals::crossings>, true},
    {"carried", number_cell<&Totals::carried>},
    {"largest carry", number_cell<&Totals::largest_carry>},
    {"moves in", count_cell<&Totals::moves_in>},
    {"moves out", count_cell<&Totals::moves_out>},
    {"info", level_cell<&WatchCounts::info>},
    {"caution", level_cell<&WatchCounts::caution>},
    {"strain", level_cell<&WatchCounts::strain>},
    {"full swings to", tempo_cell},
}};

std::size_t widest_cell(const std::vector<ResultsRow>& rows) {
  constexpr std::size_t kNarrowest = 3;
  std::size_t width = kNarrowest;
  for (const ResultsRow& row : rows) {
    for (const std::string& cell : row.cells) width = std::max(width, cell.size());
  }
  return width;
}

/// A row with the cells from `begin` to `end`.
std::string row_text(const ResultsRow& row, std::size_t begin, std::size_t end, std::size_t width,
                     const TextStyle& style) {
  std::string text =
      emphasised(fmt::format("{:<{}}", row.label, kLabel), Emphasis::faint, style.colour);
  for (std::size_t i = begin; i < end; ++i)
    text += fmt::format("{:>{}}", row.cells[i], width + kGap);
  return text + '\n';
}

std::string head_row(Hand hand, std::size_t begin, std::size_t end, std::size_t width,
                     const TextStyle& style) {
  std::string text = fmt::format("{:<{}}", to_string(hand) + " hand", kLabel);
  for (std::size_t i = begin; i < end; ++i) {
    text += fmt::format("{:>{}}", fingering_label(i), width + kGap);
  }
  return emphasised(text, Emphasis::strong, style.colour) + '\n';
}

}  // namespace

std::vector<ResultsRow> results_rows(const HandComparison& hand) {
  std::vector<ResultsRow> rows;
  for (const Number& number : kNumbers) {
    ResultsRow filled{number.label, {}};
    bool says_something = number.always;
    for (const HandResult& result : hand.results) {
      filled.cells.push_back(number.cell(result));
      says_something |= filled.cells.back() != kNone && filled.cells.back() != kUnknown;
    }
    if (says_something) rows.push_back(std::move(filled));
  }
  return rows;
}

std::string results_table(const HandComparison& hand, const TextStyle& style) {
  const std::vector<ResultsRow> rows = results_rows(hand);
  const std::size_t width = widest_cell(rows);
  const std::size_t room = static_cast<std::size_t>(style.columns) - kLabel;
  const std::size_t fit = std::max<std::size_t>(1, room / (width + kGap));
  std::string text;
  for (std::size_t begin = 0; begin < hand.results.size(); begin += fit) {
    const std::size_t end = std::min(begin + fit, hand.results.size());
    text += '\n' + head_row(hand.hand, begin, end, width, style);
    for (const ResultsRow& row : rows) text += row_text(row, begin, end, width, style);
  }
  return text;
}

}  // namespace fingerturn
