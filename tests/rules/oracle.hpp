#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/score.hpp"

#include <cstddef>
#include <optional>
#include <vector>

/// The rules of docs/rules.md, sections 1 to 3, written down a second time as plainly as they can
/// be. It knows nothing of src/rules, so that the two can be held against each other.
namespace fingerturn::oracle {

struct Verdict {
  std::size_t event = 0;
  std::size_t index = 0;
  std::size_t gesture = 0;
  Rotation rotation = Rotation::undetermined;
  std::optional<Side> side;
  std::optional<Side> change;
  std::optional<Direction> prepare;
  std::optional<int> swings;
  Crossing crossing = Crossing::none;
};

/// One verdict for every event of the line in which something is struck.
std::vector<Verdict> judge(const Line& line);

}  // namespace fingerturn::oracle
