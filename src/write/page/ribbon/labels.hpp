#pragma once

#include "write/page/ribbon/ribbon.hpp"

#include <string>
#include <vector>

namespace fingerturn {

/// What stands at a node beyond the ribbon: how far the arm carries, or a number of the list.
struct RibbonLabel {
  InkKind kind;
  double x;
  std::string words;
};

/// Adds the labels of an event whose node has its middle at x.
void append_labels(const EventAnalysis& event, double x, const WatchNumbers& watch,
                   std::vector<RibbonLabel>& labels);

/// Draws labels above or below a ribbon, each as near to it as what is there lets it, and within
/// its end.
void draw_labels(const std::vector<RibbonLabel>& labels, bool above, double end, Inks& inks);

}  // namespace fingerturn
