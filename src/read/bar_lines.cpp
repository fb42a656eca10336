#include "read/bar_lines.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

BarLineStyle merged(BarLineStyle earlier, BarLineStyle later) {
  const bool both = earlier == BarLineStyle::repeat_end && later == BarLineStyle::repeat_start;
  if (both) return BarLineStyle::repeat_both;
  return std::max(earlier, later);
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
