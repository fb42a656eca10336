#pragma once

#include "fingerturn/pitch.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

/// The pieces a written pitch is made of, for readers that report on each.
namespace fingerturn {

/// The letters of the steps in their order.
inline constexpr std::string_view kStepLetters = "CDEFGAB";

/// The step of a letter from A to G in either case.
std::optional<Step> step_of_letter(char letter) noexcept;

/// What is said to those who write the seventh step as Germans do.
inline constexpr std::string_view kGermanH = "the note called H in German is B here";

/// What a note is called here that has a German name with a sign in it, such as "F#" for "fis" or
/// "Eb" for "es", in letters of any case; empty for any other word.
std::string named_in_german(std::string_view name);

/// The accidental at the beginning of a text; of no bytes where there is none.
struct AccidentalPrefix {
  std::int8_t alter = 0;
  std::size_t bytes = 0;
};
AccidentalPrefix read_accidental(std::string_view text) noexcept;

/// The accidental as the notation writes it, "n" for a natural.
std::string accidental_text(std::int8_t alter);

}  // namespace fingerturn
