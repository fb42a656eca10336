#pragma once

#include "write/notated/value.hpp"

#include <array>
#include <string_view>

namespace fingerturn {

/// What MusicXML calls a value (MusicXML 4.0, note-type-value), dots and tuplets apart.
constexpr std::string_view type_of(const NoteValue& value) noexcept {
  constexpr std::array<std::string_view, 9> kTypes{"breve", "whole", "half", "quarter", "eighth",
                                                   "16th",  "32nd",  "64th", "128th"};
  return kTypes.at(static_cast<std::size_t>(value.halvings + 1));
}

}  // namespace fingerturn
