#include "text/wrap.hpp"

#include "text/cells.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

constexpr std::size_t kLeastRoom = 16;  // words are not cut shorter

/// The next word, or as much of it as fits: the name of a file can be longer than a line.
std::string_view take_word(std::string_view& text, std::size_t room) {
  text.remove_prefix(std::min(text.find_first_not_of(' '), text.size()));
  const std::string_view word = first_cells(text.substr(0, text.find(' ')), room);
  text.remove_prefix(word.size());
  return word;
}

}  // namespace

std::string wrapped(std::string_view opening, std::string_view text, int columns) {
  const std::size_t indent = count_cells(opening);
  const auto width = static_cast<std::size_t>(std::max(columns, 1));
  const std::size_t room = std::max(kLeastRoom, width - std::min(width, indent));
  std::string out(opening);
  std::size_t used = indent;
  bool first_in_line = true;
  for (std::string_view word = take_word(text, room); !word.empty(); word = take_word(text, room)) {
    const std::size_t length = count_cells(word);
    if (!first_in_line && used + 1 + length > width) {
      out += '\n' + std::string(indent, ' ');
      used = indent;
      first_in_line = true;
    }
    if (!first_in_line) out += ' ';
    out += word;
    used += length + (first_in_line ? 0 : 1);
    first_in_line = false;
  }
  return out + '\n';
}

std::string padded(std::string_view text, std::size_t width) {
  const std::size_t length = count_cells(text);
  return std::string(text) + std::string(width - std::min(width, length), ' ');
}

}  // namespace fingerturn
