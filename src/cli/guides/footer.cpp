#include "cli/guides/footer.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace fingerturn::cli {

FooterParts parts_of_footer(std::string_view footer) {
  constexpr std::string_view kIndent = "  ";
  FooterParts parts;
  std::string paragraph;
  bool in_example = false;
  const auto close_paragraph = [&] {
    parts.words += (parts.words.empty() || paragraph.empty() ? "" : "\n\n") + paragraph;
    paragraph.clear();
  };
  while (!footer.empty()) {
    const std::size_t end = std::min(footer.find('\n'), footer.size());
    const std::string_view line = footer.substr(0, end);
    footer.remove_prefix(std::min(end + 1, footer.size()));
    const bool is_example = line.starts_with(kIndent);
    if (is_example && !in_example) {
      if (!paragraph.ends_with(':')) close_paragraph();
      parts.examples.push_back({std::exchange(paragraph, {}), {}});
    }
    in_example = is_example;
    if (is_example) {
      parts.examples.back().lines.emplace_back(line.substr(kIndent.size()));
    } else if (line.empty()) {
      close_paragraph();
    } else {
      paragraph += (paragraph.empty() ? "" : " ") + std::string(line);
    }
  }
  close_paragraph();
  return parts;
}

}  // namespace fingerturn::cli
