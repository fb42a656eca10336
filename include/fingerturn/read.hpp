#pragma once

#include "fingerturn/diagnostic.hpp"
#include "fingerturn/score.hpp"
#include "fingerturn/source.hpp"

#include <cstddef>

namespace fingerturn {

/// A score and all that was wrong with its source. What could be read is in the score even after
/// an error, but only a source without errors should be analysed.
struct ReadResult {
  Score score;
  Diagnostics diagnostics;

  [[nodiscard]] bool ok() const noexcept { return diagnostics.errors == 0; }
};

/// The largest source a reader takes, in bytes; a larger one is an error ("too-large").
inline constexpr std::size_t kLargestSource = std::size_t{16} * 1024 * 1024;

/// Reads the passage notation (docs/notation.md). Any bytes may come in: nothing throws, and time
/// and memory grow in proportion to the source.
///
///     ReadResult result = read_notation(Source("warmup.passage", "C4:1 D:2 E:3"));
///     if (!result.ok()) std::cerr << render(source, result.diagnostics);
ReadResult read_notation(const Source& source) noexcept;

}  // namespace fingerturn
