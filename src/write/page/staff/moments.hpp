#pragma once

#include "fingerturn/analysed.hpp"
#include "write/notated/notated.hpp"
#include "write/page/ribbon/ribbon.hpp"
#include "write/page/staff/reading.hpp"
#include "write/page/staff/staff_chord.hpp"

#include <array>
#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

/// A bar before it is known how wide it is drawn: what begins at each of its moments, and how much
/// room that needs.
namespace fingerturn {

/// The most hands that stand above one another.
inline constexpr std::size_t kMostHands = 2;

/// A struck event of a moment: its number among those of the line, and the room of its node.
struct MomentNode {
  std::size_t number = 0;
  NodeRoom room;
};

/// What a hand has at a moment.
struct HandMoment {
  std::vector<StaffChord> chords;
  Inks heads;  ///< with accidentals, dots and rests
  std::vector<MomentNode> nodes;
  /// How far the ink reaches left and right of the edge of the heads; nothing where there is none.
  std::optional<Box> reach;
};

struct Moment {
  Ticks onset = 0;
  bool grace = false;
  double length = 0;  ///< to the next moment, in whole notes; 0 of a grace note
  std::array<HandMoment, kMostHands> hands;
};

/// A bar or, where a bar is too wide for its page, a part of one.
struct MeasuredBar {
  std::shared_ptr<const NotatedBar> bar;  ///< of all parts of it; the moments point into it
  std::vector<Moment> moments;
  std::vector<Reading> readings;  ///< of each hand
  bool goes_on = false;           ///< it begins where a part of the bar ended
  bool ends = true;               ///< it has the bar's end
  /// In the place of bars that come again: they are named, and nothing of them is drawn.
  std::optional<BarsAgain> again{};
};

/// Measures a bar of hands whose staves are read in this way: of each the lines whose ribbons it
/// has. `ticks` are those of a whole note.
MeasuredBar measured(NotatedBar bar, const RibbonsOfHands& hands,
                     const std::vector<Reading>& readings, std::optional<Ticks> ticks);

}  // namespace fingerturn
