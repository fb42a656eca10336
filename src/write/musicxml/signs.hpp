#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/report.hpp"

#include <array>
#include <cstddef>
#include <string>

/// What is written under the notes of a score, and the legend that explains it.
namespace fingerturn {

/// The sign of an event: an arrow the way it plays, doubled for a double rotation, with a stroke
/// where it starts from for a preparatory one. Or the same in words.
///
///     single →   double ⇒   preparatory |→   level =   undetermined ?
std::string score_sign(const EventAnalysis& event, Hand hand, bool words);

/// What the legend has to explain.
struct LegendNeeds {
  std::array<bool, 5> rotations{};  ///< the kinds in the order of Rotation
  bool open_side = false;           ///< a preparatory event without a side
  bool open_kind = false;           ///< an undetermined event whose side is known
  bool visits = false;              ///< a sign one line lower
};
void add_needs(const EventAnalysis& event, LegendNeeds& needs);

/// The legend with the caution, in lines that each end with a line feed.
std::string score_legend(const LegendNeeds& needs, bool words);

}  // namespace fingerturn
