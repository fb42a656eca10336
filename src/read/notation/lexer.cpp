#include "read/notation/lexer.hpp"

#include "text/utf8.hpp"

#include <array>

namespace fingerturn {
namespace {

/// The bytes of the blank at the beginning of a text; 0 where it begins with something else.
/// Besides space and tab these are the blanks that word processors leave behind.
std::size_t blank_length(std::string_view text) noexcept {
  if (text.empty()) return 0;
  if (text.front() == ' ' || text.front() == '\t') return 1;
  if (static_cast<unsigned char>(text.front()) < 0x80) return 0;
  const CodePoint point = first_code_point(text);
  const bool blank = point.value == 0xA0 || (point.value >= 0x2000 && point.value <= 0x200B) ||
                     point.value == 0x202F || point.value == 0x3000;
  return blank ? point.bytes : 0;
}

struct BarLineForm {
  std::string_view text;
  BarLineStyle style;
};

/// Longer forms first, so that the whole sign is taken.
constexpr std::array<BarLineForm, 8> kBarLineForms{{{":||:", BarLineStyle::repeat_both},
                                                    {":|:", BarLineStyle::repeat_both},
                                                    {":||", BarLineStyle::repeat_end},
                                                    {"||:", BarLineStyle::repeat_start},
                                                    {":|", BarLineStyle::repeat_end},
                                                    {"|:", BarLineStyle::repeat_start},
                                                    {"||", BarLineStyle::double_bar},
                                                    {"|", BarLineStyle::single}}};

const BarLineForm* bar_line_at(std::string_view text) noexcept {
  if (text.front() != '|' && text.front() != ':') return nullptr;
  for (const BarLineForm& form : kBarLineForms) {
    if (text.starts_with(form.text)) return &form;
  }
  return nullptr;
}

std::size_t word_length(std::string_view text) noexcept {
  std::size_t length = 0;
  while (length < text.size()) {
    const std::string_view rest = text.substr(length);
    if (rest.front() == ',' || bar_line_at(rest) != nullptr || blank_length(rest) > 0) break;
    length += first_code_point(rest).bytes;
  }
  return length;
}

Token take(TextPiece& line, TokenKind kind, std::size_t length, BarLineStyle style) noexcept {
  const Token token{kind, line.part(0, length), style};
  line = line.from(length);
  return token;
}

}  // namespace

TextPiece without_comment(TextPiece line) noexcept {
  for (std::size_t at = line.text.find('#'); at != std::string_view::npos;
       at = line.text.find('#', at + 1)) {
    const bool opens_comment = at == 0 || line.text[at - 1] == ' ' || line.text[at - 1] == '\t';
    if (opens_comment) return line.part(0, at);
  }
  return line;
}

std::optional<TextPiece> comment_in(TextPiece line) noexcept {
  const TextPiece comment = trimmed(line);
  if (!comment.text.starts_with('#')) return std::nullopt;
  return comment.from(comment.text.starts_with("# ") ? 2 : 1);
}

TextPiece trimmed(TextPiece piece) noexcept {
  while (const std::size_t length = blank_length(piece.text)) piece = piece.from(length);
  while (!piece.text.empty() && (piece.text.back() == ' ' || piece.text.back() == '\t')) {
    piece.text.remove_suffix(1);
  }
  return piece;
}

std::optional<Token> next_token(TextPiece& line) noexcept {
  while (const std::size_t length = blank_length(line.text)) line = line.from(length);
  if (line.text.empty()) return std::nullopt;
  if (line.text.front() == ',') return take(line, TokenKind::breath, 1, {});
  if (const BarLineForm* form = bar_line_at(line.text)) {
    return take(line, TokenKind::bar_line, form->text.size(), form->style);
  }
  return take(line, TokenKind::word, word_length(line.text), {});
}

}  // namespace fingerturn
