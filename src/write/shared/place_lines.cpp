#include "write/shared/place_lines.hpp"

#include "text/utf8.hpp"
#include "text/wrap.hpp"

#include <fmt/core.h>

namespace fingerturn {

std::string passage_words(std::size_t passage, const std::string& title) {
  return title.empty() ? fmt::format("passage {}", passage + 1)
                       : fmt::format("passage {} ({})", passage + 1, printable(title));
}

std::string continued(const std::string& line, std::optional<int> columns) {
  constexpr int kIndent = 2;
  if (!columns) return line + '\n';
  // All lines are made as wide as an indented one may be; the first needs no indent.
  std::string text = wrapped(std::string(kIndent, ' '), line, *columns);
  return text.substr(kIndent);
}

}  // namespace fingerturn
