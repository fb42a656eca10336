#pragma once

#include "write/page/staff/moments.hpp"

#include <string>

namespace fingerturn {

bool begins_repeat(BarLineStyle style) noexcept;
bool ends_repeat(BarLineStyle style) noexcept;

/// The bar lines of a bar, where those of its hands may differ.
BarLineStyle left_of(const NotatedBar& bar) noexcept;
BarLineStyle right_of(const NotatedBar& bar) noexcept;

/// Whether a hand has another clef in the bar that follows.
bool changes_clef(const MeasuredBar& bar, const MeasuredBar& next);

/// A clef, the signs of a key and a meter, each from `x` on; the width is that of the ink.
Inks draw_clef(Reading reading, double x, double scale);
Inks draw_key(KeySignature key, KeySignature before, Reading reading, double x);
Inks draw_meter(const Meter& meter, double x);

/// How much room a repeat sign takes.
inline constexpr double kRepeatRoom = 1.2;
/// The air after a sign.
inline constexpr double kSignGap = 0.65;

/// How bars that come again are named: "29-31 as 4-6", with the strokes of a range.
std::string words_of(const BarsAgain& again);
inline constexpr double kAgainSize = 2;
/// The room that their name needs beyond that of an empty bar.
double room_of(const BarsAgain& again);

/// Signs that stand before the notes of a bar, and where the notes may begin.
struct BarSigns {
  Inks inks;
  double end = 0;
};

/// The key and meter that begin to hold in a bar, from x on.
BarSigns changes_in(const MeasuredBar& bar, std::size_t hand, KeySignature before, double x);

/// Clef, key and meter at the head of a system that begins with a bar.
BarSigns head_of(const MeasuredBar& bar, std::size_t hand, KeySignature key, double x);

}  // namespace fingerturn
