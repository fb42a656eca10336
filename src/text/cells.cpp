#include "text/cells.hpp"

#include "text/utf8.hpp"

#include <algorithm>
#include <clocale>
#include <cwchar>

namespace fingerturn {
namespace {

/// The locale of all characters, opened once and never closed; null where the system has none.
locale_t all_characters() noexcept {
  static const locale_t kLocale = ::newlocale(LC_CTYPE_MASK, "C.UTF-8", locale_t{});
  return kLocale;
}

/// As long as it lives, this thread, and no other, asks about characters by the locale of all.
class WidthsOfCharacters {
 public:
  WidthsOfCharacters() noexcept
      : known_(all_characters() != locale_t{}), before_(::uselocale(all_characters())) {}
  ~WidthsOfCharacters() { ::uselocale(before_); }
  WidthsOfCharacters(const WidthsOfCharacters&) = delete;
  WidthsOfCharacters& operator=(const WidthsOfCharacters&) = delete;

  [[nodiscard]] std::size_t of(CodePoint point) const noexcept {
    constexpr char32_t kFirstBeyondAscii = 0x80;
    if (!known_ || !point.valid || point.value < kFirstBeyondAscii) return 1;
    const int cells = ::wcwidth(static_cast<wchar_t>(point.value));
    return cells < 0 ? 1 : static_cast<std::size_t>(cells);
  }

 private:
  bool known_;
  locale_t before_;
};

bool is_ascii(std::string_view text) noexcept {
  return std::all_of(text.begin(), text.end(),
                     [](char byte) { return static_cast<unsigned char>(byte) < 0x80; });
}

}  // namespace

std::size_t count_cells(std::string_view text) noexcept {
  if (is_ascii(text)) return text.size();
  const WidthsOfCharacters widths;
  std::size_t cells = 0;
  while (!text.empty()) {
    const CodePoint point = first_code_point(text);
    cells += widths.of(point);
    text.remove_prefix(point.bytes);
  }
  return cells;
}

std::string_view first_cells(std::string_view text, std::size_t most) noexcept {
  // With one more than fit, so that no mark follows.
  if (is_ascii(text.substr(0, most + 1))) return text.substr(0, most);
  const WidthsOfCharacters widths;
  std::size_t bytes = 0;
  for (std::size_t cells = 0; bytes < text.size();) {
    const CodePoint point = first_code_point(text.substr(bytes));
    cells += widths.of(point);
    if (cells > most) break;
    bytes += point.bytes;
  }
  return text.substr(0, bytes);
}

}  // namespace fingerturn
