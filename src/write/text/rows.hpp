#pragma once

#include "write/text/columns.hpp"
#include "write/text/signs.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

/// What the rows of the text report say about one event.
namespace fingerturn {

/// The rows of a hand below its notes and fingers, from top to bottom.
enum class Row : std::uint8_t { rotation, prepare, play, forearm, crossing, held, carry, depth };
inline constexpr std::array kRows{Row::rotation, Row::prepare, Row::play,  Row::forearm,
                                  Row::crossing, Row::held,    Row::carry, Row::depth};

std::string_view label_of(Row row) noexcept;

struct Cell {
  std::string text;
  Emphasis emphasis = Emphasis::plain;

  friend bool operator==(const Cell&, const Cell&) = default;
};

/// A row is left out where none of its cells says anything: that fingers are missing, the row of
/// fingers says.
bool says_something(const Cell& cell) noexcept;

/// The note names of an event, highest first, as the eye reads a staff.
std::vector<std::string> note_cells(const ShownEvent& shown);
/// The fingers of the same notes in the same order.
std::vector<std::string> finger_cells(const ShownEvent& shown, const Line& line);
Cell row_cell(Row row, const ShownEvent& shown, const AnalysedLine& line, const Signs& signs);

/// The width of everything the event says, in code points.
std::size_t width_of(const ShownEvent& shown, const AnalysedLine& line);

}  // namespace fingerturn
