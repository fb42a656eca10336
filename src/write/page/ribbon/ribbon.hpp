#pragma once

#include "fingerturn/analysed.hpp"
#include "write/page/ink/ink.hpp"

#include <cstddef>
#include <map>
#include <vector>

/// The ribbon of a hand in a system: two lines, the upper for what is played to the right, with the
/// fingers as nodes on them and the swings between. Its upper line is at 0.
namespace fingerturn {

/// An event of the ribbon: its number among the struck events of the line, and its middle.
struct RibbonNode {
  std::size_t number = 0;
  double x = 0;
};

/// The numbers of the findings of a passage's list that an event of a line has.
using WatchNumbers = std::multimap<std::size_t, std::size_t>;

struct RibbonPart {
  std::vector<RibbonNode> nodes;
  double begin = 0;  ///< of the lines
  double end = 0;
  double way_in = 0;   ///< where the forearm's way begins that comes from elsewhere
  double way_out = 0;  ///< and where it ends that leads on
};

/// For each hand the lines whose ribbons stand beside its staff: fingerings of the same notes, of
/// which the first has the staff. Their struck events have the same numbers.
using RibbonsOfHands = std::vector<std::vector<AnalysedLine>>;

/// The room that a node and the swing into it need, on both sides of its middle.
struct NodeRoom {
  double left = 0;
  double right = 0;
};
NodeRoom room_of(const AnalysedLine& line, std::size_t number);

/// The ribbon of a stretch of a line; its labels stand above it for the right hand, below it for
/// the left.
Inks draw_ribbon(const AnalysedLine& line, const RibbonPart& part, const WatchNumbers& watch);

}  // namespace fingerturn
