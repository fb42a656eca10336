#pragma once

#include "fingerturn/fingering.hpp"
#include "fingerturn/score.hpp"

#include <optional>

namespace fingerturn::cli {

/// The score with its missing fingers, and a remark in each passage on how hard the model finds
/// it. Where more than one fingering is asked for, a passage stands there once for each, the
/// easiest first; a hand that has no further one keeps its last. Where only some bars are to be
/// shown the rest keeps its easiest fingering, so that they are what differs.
Score with_fingerings(const Score& score, const FingeringOptions& options,
                      const std::optional<BarRange>& bars);

}  // namespace fingerturn::cli
