#pragma once

#include "fingering/terms.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/score.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace fingerturn {

/// What decides how a line is fingered.
struct LineOptions {
  std::optional<int> reach_semitones;
  std::size_t most = 1;  ///< how many fingerings, 1 or more
};

/// The easiest fingerings of a line, all different, the easiest first; one at least.
std::vector<LineFingering> finger_line(const Line& written, const Model& model,
                                       const LineOptions& options);

}  // namespace fingerturn
