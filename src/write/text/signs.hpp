#pragma once

#include "fingerturn/analysis.hpp"

#include <cstdint>
#include <string>
#include <string_view>

namespace fingerturn {

/// The signs of the text report that are not letters.
struct Signs {
  std::string_view left = "\xE2\x86\x90";      // arrow to the left
  std::string_view right = "\xE2\x86\x92";     // arrow to the right
  std::string_view nothing = "\xC2\xB7";       // middle dot
  std::string_view bar_line = "\xE2\x94\x82";  // vertical line
  std::string_view between = " \xC2\xB7 ";     // middle dot between the parts of a line
};

inline constexpr Signs kUnicodeSigns{};
inline constexpr Signs kAsciiSigns{"<", ">", "-", "|", " - "};

/// How a word of the report stands out on a terminal.
enum class Emphasis : std::uint8_t { plain, strong, faint, prepared, doubled, open };

/// The text in terminal colours, or as it is where none are wanted.
std::string emphasised(std::string_view text, Emphasis emphasis, bool colour);

/// The short words of the row `rotation`, and what stands for a direction.
std::string_view short_name_of(Rotation rotation) noexcept;
Emphasis emphasis_of(Rotation rotation) noexcept;
std::string_view short_name_of(Crossing crossing) noexcept;
std::string_view sign_of(Direction direction, const Signs& signs) noexcept;

}  // namespace fingerturn
