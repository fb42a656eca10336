#include "write/markdown/part.hpp"

#include "write/shared/cues.hpp"
#include "write/shared/note_words.hpp"

#include <algorithm>
#include <utility>

namespace fingerturn {
namespace {

PagePart part_of(const AnalysedPassage& passage, SharedLines lines) {
  PageLayout layout = layout_of(passage, lines);
  return {std::move(lines), std::move(layout)};
}

/// Calls `each` with the events of a line in a piece.
template <typename Each>
void visit_events(const PagePart& part, std::size_t line, const Piece& piece, const Each& each) {
  for (std::size_t i = 0; i < piece.column_count; ++i) {
    const auto& shown = part.layout.columns[piece.first_column + i].events[line];
    if (shown) each(*shown);
  }
}

}  // namespace

std::vector<PagePart> page_parts(const AnalysedPassage& passage) {
  std::vector<PagePart> parts;
  for (const SharedLines& lines : lines_together(passage)) parts.push_back(part_of(passage, lines));
  return parts;
}

bool shows_row(Row row, const PagePart& part, std::size_t line, const PageSystem& system) {
  bool found = false;
  for (const Piece& piece : system) {
    visit_events(part, line, piece, [&](const ShownEvent& shown) {
      found |= says_something(row_cell(row, shown, part.lines[line], kUnicodeSigns));
    });
  }
  return found;
}

std::size_t most_notes(const PagePart& part, std::size_t line, const PageSystem& system) {
  std::size_t most = 1;
  for (const Piece& piece : system) {
    visit_events(part, line, piece,
                 [&](const ShownEvent& shown) { most = std::max(most, note_cells(shown).size()); });
  }
  return most;
}

}  // namespace fingerturn
