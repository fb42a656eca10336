#pragma once

#include "text/text_out.hpp"
#include "write/page/part.hpp"

#include <cstddef>

namespace fingerturn {

/// A page that grows, and the counters that make its ids unique.
struct HtmlPage : TextFlow {
  std::size_t pictures = 0;
  bool unfolded = false;  ///< PageStyle::unfolded
};

/// The systems of a part: for each piece a table whose first row is the picture.
void add_systems(HtmlPage& page, const PagePart& part);

}  // namespace fingerturn
