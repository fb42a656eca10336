#pragma once

#include "write/notated/notated.hpp"
#include "write/page/ink/ink.hpp"
#include "write/page/staff/reading.hpp"

#include <array>
#include <optional>
#include <span>
#include <vector>

namespace fingerturn {

/// The middle line of a staff, from its highest.
inline constexpr double kMiddleLine = 2;
inline constexpr double kStaffHeight = 4;
inline constexpr double kHeadWidth = 1.18;
inline constexpr double kGraceScale = 0.65;

/// Where a staff position lies below the highest line.
constexpr double y_of(int position) noexcept { return kStaffHeight - position / 2.0; }

/// A chord on its staff before its stem is drawn. Places along time are counted from the left edge
/// of the heads of its moment.
struct StaffChord {
  const NotatedChord* chord = nullptr;
  std::size_t voice = 0;
  bool stem_up = true;
  double shift = 0;            ///< of its heads, where another voice has the place
  std::vector<int> positions;  ///< of its heads

  [[nodiscard]] double scale() const noexcept { return chord->grace ? kGraceScale : 1; }
  [[nodiscard]] double stem_x() const noexcept;
  [[nodiscard]] bool has_stem() const noexcept;
};

/// Whether the stems of chords that have them in common go up; of no two voices.
bool stems_up(std::span<const StaffChord> chords) noexcept;

/// Puts the heads of what a hand has at one moment side by side where voices would cover one
/// another.
void set_apart(std::vector<StaffChord>& chords);

/// Heads, ledger lines, accidentals, dots and rests of a moment.
Inks draw_moment(const std::vector<StaffChord>& chords);

/// Where each head is drawn, in the order of the chord: seconds stand on both sides of the stem.
std::vector<double> head_places(const StaffChord& chord);

/// The sign of an accidental.
Glyph sign_of(int alter) noexcept;

}  // namespace fingerturn
