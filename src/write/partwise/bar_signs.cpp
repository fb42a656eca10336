#include "write/partwise/bar_signs.hpp"

#include <algorithm>
#include <string_view>

namespace fingerturn {
namespace {

/// Both hands have the same, where both have a sign.
BarLineStyle style_of(const NotatedBar& bar, BarLineStyle NotatedHand::*side) {
  BarLineStyle style = BarLineStyle::single;
  for (const NotatedHand& hand : bar.hands) style = std::max(style, hand.*side);
  return style;
}

void add_bar_line(std::string_view location, std::string_view style, std::string_view repeat,
                  XmlText& xml) {
  xml.open(fmt::format("barline location=\"{}\"", location));
  xml.add("bar-style", style);
  if (!repeat.empty()) xml.add(fmt::format("repeat direction=\"{}\"", repeat));
  xml.close();
}

}  // namespace

void add_left_bar_line(const NotatedBar& bar, bool is_first, XmlText& xml) {
  const BarLineStyle style = style_of(bar, &NotatedHand::left);
  if (style == BarLineStyle::repeat_start || style == BarLineStyle::repeat_both) {
    add_bar_line("left", "heavy-light", "forward", xml);
  } else if (style == BarLineStyle::double_bar && is_first) {
    add_bar_line("left", "light-light", "", xml);
  }
}

void add_right_bar_line(const NotatedBar& bar, XmlText& xml) {
  const BarLineStyle style = style_of(bar, &NotatedHand::right);
  if (style == BarLineStyle::repeat_end || style == BarLineStyle::repeat_both) {
    add_bar_line("right", "light-heavy", "backward", xml);
  } else if (style == BarLineStyle::double_bar) {
    add_bar_line("right", "light-light", "", xml);
  }
}

}  // namespace fingerturn
