#pragma once

#include "fingering/cost_memo.hpp"
#include "fingering/costs.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace fingerturn {

/// One way through a line: for each grip the place of its choice among its choices.
struct Path {
  std::int64_t difficulty = 0;  ///< in parts of a thousandth
  std::vector<std::uint8_t> choices;
};

/// The choice so many grips before one; 0 before the beginning.
std::size_t choice_before(const Path& path, std::size_t grip, std::size_t back) noexcept;

/// The least that remains to be paid after each two neighbouring choices, worked out from the end
/// of the line to its beginning. Time and memory grow with the number of grips.
class Remaining {
 public:
  explicit Remaining(const LineCosts& costs);

  /// After `choice` at a grip, `before` at the one before it (0 for the first grip).
  [[nodiscard]] std::int64_t after(std::size_t grip, std::size_t before,
                                   std::size_t choice) const noexcept {
    return least_[begins_[grip] + before * counts_[grip] + choice];
  }

 private:
  void weigh(const LineCosts& costs, CostMemo& memo, std::size_t grip);
  [[nodiscard]] std::size_t count_before(std::size_t grip) const noexcept {
    return grip == 0 ? 1 : counts_[grip - 1];
  }

  std::vector<std::size_t> counts_;
  std::vector<std::size_t> begins_;
  std::vector<std::int64_t> least_;
};

/// The easiest path. Of several the one that has the lower choice where they first differ.
Path easiest_path(const LineCosts& costs, const Remaining& remaining);

}  // namespace fingerturn
