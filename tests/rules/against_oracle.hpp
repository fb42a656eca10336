#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/score.hpp"

#include <array>
#include <cstddef>
#include <string>

namespace fingerturn {

/// What was met while lines were compared, so that a test can tell that it met enough.
struct OutcomeTally {
  std::size_t lines = 0;
  std::size_t events = 0;
  std::array<std::size_t, 5> rotations{};  ///< by the order of Rotation
  std::array<std::size_t, 4> crossings{};  ///< by the order of Crossing
  std::size_t without_side = 0;            ///< preparatory, single or double with no side
  std::size_t side_after_gap = 0;          ///< undetermined, but with a side
  std::size_t gestures = 0;
};

/// Holds an analysis against the oracle, event by event and field by field. Empty where they
/// agree; else the first difference in words, with the passage.
std::string difference_from_oracle(const Line& line, const LineAnalysis& analysis,
                                   OutcomeTally& tally);

}  // namespace fingerturn
