#include "text/wrap.hpp"

#include "text/cells.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

constexpr std::size_t kLeastRoom = 16;  // words are not cut shorter

/// The words of a text. Where each ends is looked for once, however many pieces it is cut into: the
/// name of a file can be longer than a line, and a word as long as a file.
class Words {
 public:
  explicit Words(std::string_view text) : text_(text) {}

  /// The next word, or as much of it as fits; empty where there is none.
  std::string_view take(std::size_t room) {
    if (word_.empty()) {
      text_.remove_prefix(std::min(text_.find_first_not_of(' '), text_.size()));
      word_ = text_.substr(0, text_.find(' '));
      text_.remove_prefix(word_.size());
    }
    const std::string_view piece = first_cells(word_, room);
    word_.remove_prefix(piece.size());
    return piece;
  }

 private:
  std::string_view text_;  ///< after the word
  std::string_view word_;  ///< what is left of it
};

}  // namespace

std::string wrapped(std::string_view opening, std::string_view text, int columns) {
  const std::size_t indent = count_cells(opening);
  const auto width = static_cast<std::size_t>(std::max(columns, 1));
  const std::size_t room = std::max(kLeastRoom, width - std::min(width, indent));
  std::string out(opening);
  std::size_t used = indent;
  bool first_in_line = true;
  Words words(text);
  for (std::string_view word = words.take(room); !word.empty(); word = words.take(room)) {
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
