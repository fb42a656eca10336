#include "cli/guides/shell_words.hpp"

#include <cstddef>

namespace fingerturn::cli {

std::string quoted_for_shell(std::string_view word) {
  std::string quoted = "'";
  for (const char letter : word) quoted += letter == '\'' ? "'\\''" : std::string(1, letter);
  return quoted + '\'';
}

std::string quoted_for_shell(const std::vector<std::string>& words) {
  std::string row;
  for (const std::string& word : words) row += (row.empty() ? "" : " ") + quoted_for_shell(word);
  return row;
}

std::string with_backslashes(std::string_view text, std::string_view letters) {
  std::string escaped;
  for (const char letter : text) {
    if (letters.find(letter) != std::string_view::npos) escaped += '\\';
    escaped += letter;
  }
  return escaped;
}

std::string filled_in(std::string text, std::string_view place, std::string_view words) {
  for (std::size_t at = text.find(place); at != std::string::npos;
       at = text.find(place, at + words.size())) {
    text.replace(at, place.size(), words);
  }
  return text;
}

}  // namespace fingerturn::cli
