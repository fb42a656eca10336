#include "write/text/head.hpp"

#include "text/cells.hpp"
#include "text/utf8.hpp"
#include "text/wrap.hpp"
#include "write/text/signs.hpp"

namespace fingerturn {

std::string title_line(std::string_view title, const TextStyle& style) {
  std::string text = wrapped("", printable(title), style.columns);
  text.pop_back();
  return emphasised(text, Emphasis::strong, style.colour) + '\n';
}

std::string joined_lines(const std::vector<std::string>& parts, const TextStyle& style) {
  const std::string_view between = style.ascii ? kAsciiSigns.between : kUnicodeSigns.between;
  std::string text;
  std::string line;
  for (const std::string& part : parts) {
    const std::size_t length = count_cells(line) + count_cells(between) + count_cells(part);
    if (!line.empty() && length > static_cast<std::size_t>(style.columns)) {
      text += wrapped("", line, style.columns);
      line.clear();
    }
    line += (line.empty() ? "" : std::string(between)) + part;
  }
  return line.empty() ? text : text + wrapped("", line, style.columns);
}

}  // namespace fingerturn
