#include "text/utf8.hpp"

#include <array>

namespace fingerturn {
namespace {

bool is_control(char32_t value) { return value < 0x20 || (value >= 0x7F && value < 0xA0); }

/// Marks that change the direction of the text after them, and the line separators: they would
/// let a title rearrange a report.
bool rearranges_text(char32_t value) {
  return (value >= 0x202A && value <= 0x202E) || (value >= 0x2066 && value <= 0x2069) ||
         value == 0x2028 || value == 0x2029;
}

bool is_plain(char32_t value) {
  return value == U'\t' || (!is_control(value) && !rearranges_text(value));
}

std::size_t length_announced(unsigned char lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead < 0xE0) return 2;
  if (lead >= 0xE0 && lead < 0xF0) return 3;
  if (lead >= 0xF0 && lead < 0xF5) return 4;
  return 0;
}

}  // namespace

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
    if (!is_plain(point.value)) return BadByte{offset, point.bytes, true};
    offset += point.bytes;
  }
  return std::nullopt;
}

std::string printable(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  while (!text.empty()) {
    const CodePoint point = first_code_point(text);
    const bool kept = point.valid && is_plain(point.value);
    out += kept ? text.substr(0, point.bytes) : kReplacement;
    text.remove_prefix(point.bytes);
  }
  return out;
}

}  // namespace fingerturn
