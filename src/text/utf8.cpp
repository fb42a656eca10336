#include "text/utf8.hpp"

#include <algorithm>
#include <array>

namespace fingerturn {
namespace {

struct CodePoints {
  char32_t first;
  char32_t last;
};

/// Named as in the Unicode Standard. Left in are the joiner and the non-joiner, without which words
/// of Persian or Hindi are misspelled.
constexpr std::array<CodePoints, 7> kActingBeyondAscii{{
    {0x0080, 0x009F},  // control characters, among them one that steers a terminal as ESC [ does
    {0x061C, 0x061C},  // Arabic letter mark
    {0x200E, 0x200F},  // left-to-right mark, right-to-left mark
    {0x2028, 0x202E},  // separators of lines and paragraphs, embeddings and overrides of direction
    {0x2066, 0x206F},  // isolates of direction, deprecated format characters
    {0xFFF9, 0xFFFB},  // interlinear annotation
    {0xE0000, 0xE007F},  // tags, which nobody sees
}};

std::size_t length_announced(unsigned char lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead < 0xE0) return 2;
  if (lead >= 0xE0 && lead < 0xF0) return 3;
  if (lead >= 0xF0 && lead < 0xF5) return 4;
  return 0;
}

}  // namespace

bool acts_on_text(char32_t value) noexcept {
  constexpr char32_t kDelete = 0x7F;
  if (value <= kDelete) return (value < U' ' && value != U'\t') || value == kDelete;
  return std::any_of(
      kActingBeyondAscii.begin(), kActingBeyondAscii.end(),
      [value](const CodePoints& range) { return value >= range.first && value <= range.last; });
}

CodePoint first_code_point(std::string_view text) noexcept {
  const auto lead = static_cast<unsigned char>(text.front());
  const std::size_t length = length_announced(lead);
  if (length == 1) return {lead, 1, true};
  if (length == 0 || text.size() < length) return {};
  constexpr std::array<unsigned, 5> kLeadBits{0, 0x7F, 0x1F, 0x0F, 0x07};
  char32_t value = lead & kLeadBits[length];
  for (std::size_t i = 1; i < length; ++i) {
    const auto next = static_cast<unsigned char>(text[i]);
    if ((next & 0xC0U) != 0x80U) return {};
    value = (value << 6U) | (next & 0x3FU);
  }
  const bool overlong = (length == 3 && value < 0x800) || (length == 4 && value < 0x10000);
  const bool surrogate = value >= 0xD800 && value < 0xE000;
  if (overlong || surrogate || value > 0x10FFFF) return {};
  return {value, length, true};
}

std::size_t count_code_points(std::string_view text) noexcept {
  std::size_t count = 0;
  while (!text.empty()) {
    text.remove_prefix(first_code_point(text).bytes);
    ++count;
  }
  return count;
}

std::optional<BadByte> find_bad_byte(std::string_view text) noexcept {
  for (std::size_t offset = 0; offset < text.size();) {
    const CodePoint point = first_code_point(text.substr(offset));
    if (!point.valid) return BadByte{offset, 1, false};
    if (acts_on_text(point.value)) return BadByte{offset, point.bytes, true};
    offset += point.bytes;
  }
  return std::nullopt;
}

std::string printable(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  while (!text.empty()) {
    const CodePoint point = first_code_point(text);
    const bool kept = point.valid && !acts_on_text(point.value);
    out += kept ? text.substr(0, point.bytes) : kReplacement;
    text.remove_prefix(point.bytes);
  }
  return out;
}

}  // namespace fingerturn
