#pragma once

#include "write/text/columns.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

/// Where the notes of a passage stand on a page, before anything is drawn. Widths are counted in
/// units of the picture, of which a line of text is twelve high.
namespace fingerturn {

/// A bar, or a part of one, that stays together however narrow the page.
struct Piece {
  std::int32_t bar = 0;
  bool goes_on = false;          ///< the bar began in the piece before
  bool ends_bar = true;          ///< no other piece of this bar follows
  std::size_t first_column = 0;  ///< in PageLayout::columns
  std::size_t column_count = 0;
};

/// The pieces that stand beside one another where the page is wide enough.
using PageSystem = std::vector<Piece>;

struct PageLayout {
  std::vector<Column> columns;
  std::vector<int> edges;  ///< where each column begins, and where the last one ends
  std::vector<PageSystem> systems;

  [[nodiscard]] int begin_of(const Piece& piece) const { return edges[piece.first_column]; }
  [[nodiscard]] int end_of(const Piece& piece) const {
    return edges[piece.first_column + piece.column_count];
  }
  /// The middle of a column, where its mark is drawn.
  [[nodiscard]] double middle_of(std::size_t column) const {
    return (edges[column] + edges[column + 1]) / 2.0;
  }
};

/// The widest a piece and a system are made, unless one column alone is wider.
inline constexpr int kWidestPiece = 220;
inline constexpr int kWidestSystem = 704;

/// The longer notes of a bar get more room than its shortest, as in engraved music: a step more
/// each time the value doubles.
/// Where not all onsets are known the notes stand evenly.
PageLayout layout_of(const AnalysedPassage& passage, const SharedLines& lines);

}  // namespace fingerturn
