#pragma once

#include "write/page/ink/ink.hpp"

#include <bitset>
#include <string>
#include <string_view>

/// Ink as SVG 1.1.
namespace fingerturn {

/// How many shapes of nodes are drawn once and referred to.
inline constexpr std::size_t kPlates = 5;

/// Which outlines and shapes a page uses.
using GlyphsUsed = std::bitset<kGlyphs + kPlates>;

/// Adds what draws the inks, in their order; its classes are those of `ink_style()`.
void add_inks(std::string& out, const Inks& inks, GlyphsUsed& used);

/// Adds the outlines that are used, for the inks to refer to.
void add_outlines(std::string& out, const GlyphsUsed& used);

/// The style sheet of the inks.
std::string_view ink_style() noexcept;

}  // namespace fingerturn
