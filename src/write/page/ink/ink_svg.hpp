#pragma once

#include "write/page/ink/ink.hpp"

#include <bitset>
#include <string>
#include <string_view>

/// Ink as SVG 1.1.
namespace fingerturn {

/// Which outlines a page uses.
using GlyphsUsed = std::bitset<kGlyphs>;

/// Adds what draws the inks, in their order; its classes are those of `ink_style()`.
void add_inks(std::string& out, const Inks& inks, GlyphsUsed& used);

/// Adds the outlines that are used, for the inks to refer to.
void add_outlines(std::string& out, const GlyphsUsed& used);

/// The style sheet of the inks.
std::string_view ink_style() noexcept;

}  // namespace fingerturn
