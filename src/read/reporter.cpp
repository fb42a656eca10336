#include "read/reporter.hpp"

#include "text/utf8.hpp"

namespace fingerturn {

std::string quoted(std::string_view found) {
  if (found.empty()) return "nothing";
  constexpr std::size_t kMostShown = 24;
  std::size_t end = 0;
  for (std::size_t shown = 0; shown < kMostShown && end < found.size(); ++shown) {
    end += first_code_point(found.substr(end)).bytes;
  }
  const std::string_view dots = end < found.size() ? "..." : "";
  return '"' + std::string(found.substr(0, end)) + std::string(dots) + '"';
}

}  // namespace fingerturn
