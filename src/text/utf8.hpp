#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

/// UTF-8 as the sources and reports need it. No text is trusted to be valid.
namespace fingerturn {

/// U+FFFD, which stands for what cannot be shown.
inline constexpr std::string_view kReplacement = "\xEF\xBF\xBD";

/// The first code point of a text.
struct CodePoint {
  char32_t value = 0;
  std::size_t bytes = 1;  ///< how many bytes it takes; 1 for a byte that is no UTF-8
  bool valid = false;
};

/// Decodes the first code point of a text that is not empty. Overlong forms, surrogates and
/// values past U+10FFFF are not valid (RFC 3629).
CodePoint first_code_point(std::string_view text) noexcept;

/// How many code points a text has, each byte that is no UTF-8 counting as one.
std::size_t count_code_points(std::string_view text) noexcept;

/// Whether a character acts instead of being shown, so that a title could rearrange a report,
/// steer a terminal or hide something: control characters other than the tab, marks of direction,
/// separators of lines, tags.
bool acts_on_text(char32_t value) noexcept;

/// A byte that no text should hold: not UTF-8, or the first of a character that acts.
struct BadByte {
  std::size_t offset = 0;
  std::size_t bytes = 1;
  bool control = false;  ///< a character that acts, else not UTF-8
};
std::optional<BadByte> find_bad_byte(std::string_view text) noexcept;

/// The text with every character that acts, and what is not UTF-8, replaced by U+FFFD.
std::string printable(std::string_view text);

}  // namespace fingerturn
