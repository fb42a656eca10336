#pragma once

#include "write/page/ink/ink.hpp"

#include <bitset>
#include <cstdint>
#include <string>
#include <string_view>

/// Ink as SVG 1.1.
namespace fingerturn {

/// How many shapes of nodes are drawn once and referred to.
inline constexpr std::size_t kPlates = 5;
/// And of swings: half a double one, back and forth, up and down.
inline constexpr std::size_t kHalfSwingShapes = 4;
inline constexpr std::size_t kDrawnOnce = kGlyphs + kPlates + kHalfSwingShapes;

/// Which outlines and shapes a page uses, and which of them at corners (below).
struct GlyphsUsed {
  std::bitset<kDrawnOnce> all;
  std::bitset<kDrawnOnce> at_corners;
};

/// How what is drawn once stands in many places: each refers to it, as all that reads SVG
/// understands, or they are the corners of a line that has it for its marker, as browsers do and in
/// a third of the letters.
enum class Repeats : std::uint8_t { references, corners };

/// Adds what draws the inks, in their order; its classes are those of `ink_style()`.
void add_inks(std::string& out, const Inks& inks, GlyphsUsed& used, Repeats repeats);

/// Adds the outlines that are used, for the inks to refer to.
void add_outlines(std::string& out, const GlyphsUsed& used);

/// The style sheet of the inks.
std::string_view ink_style() noexcept;

}  // namespace fingerturn
