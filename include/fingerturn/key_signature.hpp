#pragma once

#include "fingerturn/pitch.hpp"

#include <cstdint>
#include <string>

namespace fingerturn {

enum class Mode : std::uint8_t { unsaid, major, minor };

/// The signs at the beginning of the staves, and of which key they are, where that is said.
struct KeySignature {
  std::int8_t fifths = 0;  ///< so many sharps above 0, so many flats below
  Mode mode = Mode::unsaid;

  friend bool operator==(const KeySignature&, const KeySignature&) = default;
};

/// The most sharps or flats that a key signature has.
inline constexpr int kMostSigns = 7;

/// What a letter without a sign means: 1 where the signature makes it sharp, -1 where flat.
std::int8_t alter_in_key(KeySignature key, Step step) noexcept;

/// "D major", or "2 sharps" where no mode is said; "none" without signs and mode.
std::string to_string(KeySignature key);

}  // namespace fingerturn
