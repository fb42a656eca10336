#pragma once

#include "fingerturn/practice.hpp"

#include <string>
#include <vector>

namespace fingerturn {

/// A thing to be played, as a passage by itself.
struct PracticeSheet {
  Passage passage;       ///< its title says place and step; its tempo is that of the step
  std::string comments;  ///< lines of the notation: which notes turn otherwise than in the piece
  std::string
      words;  ///< "1b double Bb6 A6": place, step and what it is, for a place above the notes
};

/// All that a plan has to play, in its order.
std::vector<PracticeSheet> sheets_of(const AnalysedScore& analysed, const PracticePlan& plan);

}  // namespace fingerturn
