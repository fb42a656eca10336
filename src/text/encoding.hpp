#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

/// Text that is not in UTF-8, converted by the C library (iconv). Any bytes may come in: what is no
/// text in an encoding becomes U+FFFD, and time and memory grow in proportion to the bytes. Each
/// call has a converter of its own, so threads may call at the same time.
namespace fingerturn {

struct Encoding {
  const char* name = nullptr;  ///< as iconv calls it
  std::size_t unit = 1;        ///< how many bytes are dropped where they are no text
};

inline constexpr Encoding kUtf16LowFirst{"UTF-16LE", 2};
inline constexpr Encoding kUtf16HighFirst{"UTF-16BE", 2};

/// The encoding in single bytes, beyond ASCII, that has this name (IANA, character sets) in lower
/// case: ISO-8859-1, ISO-8859-15 or windows-1252. None where it is another.
std::optional<Encoding> encoding_called(std::string_view name) noexcept;

/// The bytes as UTF-8; nothing where the system cannot convert from this encoding.
///
///     to_utf8("La Cit\xE9", *encoding_called("windows-1252"));  // "La Cité"
std::optional<std::string> to_utf8(std::string bytes, Encoding encoding);

}  // namespace fingerturn
