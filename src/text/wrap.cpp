#include "text/wrap.hpp"

#include "text/utf8.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

constexpr std::size_t kLeastRoom = 16;  // columns; words are not cut shorter

/// The next word, or as much of it as `most` code points: the name of a file can be longer than a
/// line.
std::string_view take_word(std::string_view& text, std::size_t most) {
  text.remove_prefix(std::min(text.find_first_not_of(' '), text.size()));
  const std::string_view word = text.substr(0, text.find(' '));
  std::size_t size = 0;
  for (std::size_t taken = 0; taken < most && size < word.size(); ++taken) {
    size += first_code_point(word.substr(size)).bytes;
  }
  text.remove_prefix(size);
  return word.substr(0, size);
}

}  // namespace

std::string wrapped(std::string_view opening, std::string_view text, int columns) {
  const std::size_t indent = count_code_points(opening);
  const auto width = static_cast<std::size_t>(std::max(columns, 1));
  const std::size_t room = std::max(kLeastRoom, width - std::min(width, indent));
  std::string out(opening);
  std::size_t used = indent;
  bool first_in_line = true;
  for (std::string_view word = take_word(text, room); !word.empty(); word = take_word(text, room)) {
    const std::size_t length = count_code_points(word);
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
  const std::size_t length = count_code_points(text);
  return std::string(text) + std::string(width - std::min(width, length), ' ');
}

}  // namespace fingerturn
