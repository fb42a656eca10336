#pragma once

#include "write/page/staff/system.hpp"
#include "write/page/watch_list.hpp"

#include <string>
#include <string_view>
#include <vector>

/// The music of a passage as systems, whatever they are set into.
namespace fingerturn {

/// How wide systems are, in staff spaces: on a sheet of A4 or Letter with a margin of 12 mm, where
/// a staff space is 1.6 mm, and on a telephone.
inline constexpr double kSheetWidth = 116;
inline constexpr double kNarrowWidth = 56;
/// Millimetres of a staff space.
inline constexpr double kStaffSpace = 1.6;

/// Lines that share their systems, and the numbers of what is to be watched in them.
struct MusicPart {
  SharedLines lines;
  WatchNumbersOfLines watch;
};

/// The parts of a passage: both hands above one another, or one after the other where it is not
/// known which notes sound together.
std::vector<MusicPart> music_parts(const AnalysedPassage& passage, const PageWatchList& list);

/// The hands that stand above one another, as `music_parts` parts them.
std::vector<RibbonsOfHands> ribbons_in_parts(const Passage& written, const RibbonsOfHands& hands);

/// "Bars 3 to 6": which music a system shows.
std::string words_of(const System& system);

}  // namespace fingerturn
