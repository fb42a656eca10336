#pragma once

#include "fingering/terms.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/score.hpp"
#include "fingerturn/why.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace fingerturn {

/// What decides how a line is fingered.
struct LineOptions {
  std::optional<int> reach_semitones;
  std::size_t most = 1;  ///< how many fingerings, 1 or more
  FingerWishes wishes{};
};

/// The easiest fingerings of a line, all different, the easiest first; one at least.
std::vector<LineFingering> finger_line(const Line& written, const Model& model,
                                       const LineOptions& options);

/// What other fingers at one event of a line would ask for.
struct FingersInstead {
  std::vector<Finger> taken;  ///< one for each note of the event
  std::vector<OtherFingers> others;
};

/// For an event that is struck; nothing where no hand can take it. Fingers that are given there are
/// taken, and compared as if they were not given.
FingersInstead fingers_instead(const Line& written, const Model& model, const LineOptions& options,
                               std::size_t event);

}  // namespace fingerturn
