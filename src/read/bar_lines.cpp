#include "read/bar_lines.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

bool is_repeat(BarLineStyle style) { return style >= BarLineStyle::repeat_start; }

BarLineStyle merged(BarLineStyle one, BarLineStyle other) {
  const bool both = is_repeat(one) && is_repeat(other) && one != other;
  return both ? BarLineStyle::repeat_both : std::max(one, other);
}

}  // namespace

void append_bar_line(Line& line, BarLineStyle style) {
  const std::size_t place = line.events.size();
  if (!line.bar_lines.empty() && line.bar_lines.back().before_event == place) {
    line.bar_lines.back().style = merged(line.bar_lines.back().style, style);
  } else if (place > 0 || style != BarLineStyle::single) {
    line.bar_lines.push_back({place, style});
  }
}

}  // namespace fingerturn
