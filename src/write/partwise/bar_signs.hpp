#pragma once

#include "write/notated/notated.hpp"
#include "write/partwise/xml_text.hpp"

namespace fingerturn {

/// The sign at the beginning of a bar: of a repeat, or in the first bar a double bar too.
void add_left_bar_line(const NotatedBar& bar, bool is_first, XmlText& xml);
/// The sign at its end.
void add_right_bar_line(const NotatedBar& bar, XmlText& xml);

}  // namespace fingerturn
