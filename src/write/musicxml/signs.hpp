#pragma once

#include "fingerturn/analysis.hpp"
#include "write/shared/used.hpp"

#include <string>

/// What is written under the notes of a score, and the legend that explains it.
namespace fingerturn {

/// The sign of an event: an arrow the way it plays, doubled for a double rotation, with a stroke
/// where it starts from for a preparatory one. Or the same in words.
///
///     single →   double ⇒   preparatory |→   level =   undetermined ?
std::string score_sign(const EventAnalysis& event, Hand hand, bool words);

/// How signs of a score stand where it is not one under each event.
struct SignPlaces {
  bool rolled = false;  ///< those of a rolled chord stand together
  bool visits = false;  ///< some stand one line lower
};

/// The legend with the caution, in lines that each end with a line feed.
std::string score_legend(const Used& used, const SignPlaces& places, bool words);

}  // namespace fingerturn
