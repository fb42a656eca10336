#pragma once

#include "fingerturn/analysed.hpp"
#include "write/page/glyphs/outlines.hpp"
#include "write/text/columns.hpp"

#include <cstdint>
#include <vector>

namespace fingerturn {

/// How a staff is read: its clef, and whether its notes sound an octave away.
enum class Reading : std::uint8_t { treble, treble_high, bass, bass_low };

/// The clef of a reading.
constexpr Glyph clef_of(Reading reading) noexcept {
  return reading <= Reading::treble_high ? Glyph::g_clef : Glyph::f_clef;
}
/// How many octaves higher it sounds than it is written.
constexpr int octaves_of(Reading reading) noexcept {
  if (reading == Reading::treble_high) return 1;
  return reading == Reading::bass_low ? -1 : 0;
}
/// Where a pitch stands: in steps above the lowest line, which is 0; the highest is 8.
int staff_position(Pitch pitch, Reading reading) noexcept;

/// The readings of each bar of a hand.
using Readings = std::vector<Reading>;

/// How the staff of each line is best read, bar by bar: with few ledger lines and few changes.
/// Our convention, as no source gives numbers for it.
std::vector<Readings> readings_of(const BarSequence& sequence);

}  // namespace fingerturn
