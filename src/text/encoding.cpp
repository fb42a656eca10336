#include "text/encoding.hpp"

#include "text/utf8.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cerrno>
#include <cstdint>
#include <span>

#include <iconv.h>

namespace fingerturn {
namespace {

struct NamedEncoding {
  std::string_view name;
  const char* encoding;
};
constexpr std::array<NamedEncoding, 8> kNames{{{"iso-8859-1", "ISO-8859-1"},
                                               {"latin1", "ISO-8859-1"},
                                               {"latin-1", "ISO-8859-1"},
                                               {"iso-8859-15", "ISO-8859-15"},
                                               {"latin9", "ISO-8859-15"},
                                               {"latin-9", "ISO-8859-15"},
                                               {"windows-1252", "CP1252"},
                                               {"cp1252", "CP1252"}}};

class Converter {
 public:
  explicit Converter(Encoding from) noexcept : descriptor_(::iconv_open("UTF-8", from.name)) {}
  ~Converter() {
    if (is_open()) ::iconv_close(descriptor_);
  }
  Converter(const Converter&) = delete;
  Converter& operator=(const Converter&) = delete;

  [[nodiscard]] bool is_open() const noexcept {
    return std::bit_cast<std::intptr_t>(descriptor_) != -1;
  }

  /// Adds the bytes to the text as far as they are text; gives those that are left.
  std::span<char> convert(std::span<char> bytes, std::string& text) {
    constexpr auto kFailed = static_cast<std::size_t>(-1);
    char* next = bytes.data();
    std::size_t left = bytes.size();
    for (bool is_full = true; is_full;) {
      char* end = room_.data();
      std::size_t free = room_.size();
      const bool done = ::iconv(descriptor_, &next, &left, &end, &free) != kFailed;
      is_full = !done && errno == E2BIG;
      text.append(room_.data(), room_.size() - free);
    }
    return bytes.last(left);
  }

 private:
  iconv_t descriptor_;
  std::array<char, 4096> room_{};
};

}  // namespace

std::optional<Encoding> encoding_called(std::string_view name) noexcept {
  const auto* const found =
      std::find_if(kNames.begin(), kNames.end(),
                   [name](const NamedEncoding& known) { return known.name == name; });
  if (found == kNames.end()) return std::nullopt;
  return Encoding{found->encoding};
}

std::optional<std::string> to_utf8(std::string bytes, Encoding encoding) {
  Converter converter(encoding);
  if (!converter.is_open()) return std::nullopt;
  std::string text;
  text.reserve(bytes.size());
  std::span<char> left(bytes);
  while (!(left = converter.convert(left, text)).empty()) {
    text += kReplacement;
    left = left.subspan(std::min(left.size(), encoding.unit));
  }
  return text;
}

}  // namespace fingerturn
