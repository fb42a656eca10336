#pragma once

#include "read/notation/lexer.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace fingerturn {

/// What a line may begin with instead of notes.
enum class HeaderName : std::uint8_t {
  passage,
  composer,
  source,
  hand,
  meter,
  tempo,
  bar,
  reach,
  key,
  note,
  right_hand,  ///< RH: the rest of the line holds notes
  left_hand,   ///< LH: the same
  unknown
};

struct HeaderLine {
  HeaderName name = HeaderName::unknown;
  TextPiece written_name;  ///< without the colon
  TextPiece value;         ///< what follows the colon, without the blanks around it
};

/// The header at the beginning of a line, in any case; none where the line holds notes.
std::optional<HeaderLine> header_of(TextPiece line) noexcept;

/// The header of a name in any case.
HeaderName header_named(std::string_view name) noexcept;

/// The header name that was probably meant; empty where none is close.
std::string_view nearest_header(std::string_view written_name);

}  // namespace fingerturn
