#pragma once

#include "write/page/part.hpp"
#include "write/page/picture_legend.hpp"
#include "write/page/svg_hand.hpp"

#include <cstddef>
#include <string>
#include <string_view>

/// Whole pictures as elements for a page or for a larger drawing.
namespace fingerturn {

/// Which picture of a page is drawn.
struct PictureOf {
  const PagePart& part;
  std::size_t line = 0;  ///< in PagePart::lines
  const Piece& piece;
};

/// Adds the picture of a piece, named and described for screen readers. `place` is attributes that
/// say where it goes and how large; `id` makes its ids unique in the document.
void add_picture(std::string& out, const PictureOf& of, HandDrawer& drawer, std::string_view place,
                 std::size_t id);

/// Adds the small picture of an entry of the legend, which its words beside it describe.
void add_sample(std::string& out, const LegendSample& sample, std::string_view place);
double sample_height(const LegendSample& sample) noexcept;

/// "bar 3", in brackets where the bar goes on.
std::string bar_words(const Piece& piece);

}  // namespace fingerturn
