#pragma once

#include "fingering/cost_memo.hpp"
#include "fingering/costs.hpp"

#include <cstddef>
#include <cstdint>
#include <set>
#include <tuple>
#include <vector>

namespace fingerturn {

/// One way through a line: for each grip the place of its choice among its choices.
struct Path {
  std::int64_t difficulty = 0;  ///< in parts of a thousandth
  std::vector<std::uint8_t> choices;
};

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

/// Finds the easiest paths one after another, the easier first.
class EasiestPaths {
 public:
  explicit EasiestPaths(const LineCosts& costs) : costs_(costs), remaining_(costs) {}

  /// The easiest path. Of several the one that has the lower choice where they first differ.
  [[nodiscard]] Path first() const;
  /// The next easiest after those that were given, beginning with the first; empty where there is
  /// none. At most `kept` paths can be asked for. Equally easy ones come in a fixed order.
  Path next(std::size_t kept);

 private:
  /// A path that leaves the easiest way of another at one grip and goes the easiest way from there.
  struct Detour {
    std::int64_t difficulty = 0;
    std::size_t of = 0;       ///< the path that it leaves
    std::size_t at = 0;       ///< the grip at which it does
    std::uint8_t choice = 0;  ///< what it takes there

    friend bool operator<(const Detour& left, const Detour& right) noexcept {
      return std::tie(left.difficulty, left.of, left.at, left.choice) <
             std::tie(right.difficulty, right.of, right.at, right.choice);
    }
  };

  void go_on(Path& path, std::size_t from) const;
  void add_detours(std::size_t of, std::size_t from, std::size_t kept);

  const LineCosts& costs_;
  Remaining remaining_;
  std::vector<Path> given_;
  std::set<Detour> detours_;
};

}  // namespace fingerturn
