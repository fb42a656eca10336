#pragma once

#include "fingerturn/score.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace fingerturn {

/// A stretch of a line with the place of its first byte in the source.
struct TextPiece {
  std::string_view text;
  std::size_t begin = 0;

  [[nodiscard]] Span span() const noexcept {
    return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(begin + text.size())};
  }
  [[nodiscard]] TextPiece from(std::size_t offset) const noexcept {
    return {text.substr(offset), begin + offset};
  }
  [[nodiscard]] TextPiece part(std::size_t offset, std::size_t length) const noexcept {
    return {text.substr(offset, length), begin + offset};
  }
};

/// The line without its comment: a hash at its beginning or after a blank, and what follows.
TextPiece without_comment(TextPiece line) noexcept;

/// What a line says that is a comment as a whole, without the hash and a blank after it.
std::optional<TextPiece> comment_in(TextPiece line) noexcept;

/// The piece without the blanks around it.
TextPiece trimmed(TextPiece piece) noexcept;

enum class TokenKind : std::uint8_t { word, bar_line, breath };

struct Token {
  TokenKind kind = TokenKind::word;
  TextPiece piece;
  BarLineStyle style = BarLineStyle::single;  ///< of a bar line
};

/// Takes the next token off the front of a line; none where only blanks are left. Bar lines and
/// breath marks need no blanks around them.
std::optional<Token> next_token(TextPiece& line) noexcept;

}  // namespace fingerturn
