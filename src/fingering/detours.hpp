#pragma once

#include "fingering/costs.hpp"
#include "fingering/paths.hpp"

#include <cstddef>
#include <cstdint>
#include <tuple>
#include <vector>

namespace fingerturn {

/// Another choice at one grip, and how much more the easiest path that has it asks than the easiest
/// of all, in parts of a thousandth.
struct Detour {
  std::int64_t harder = 0;
  std::size_t at = 0;
  std::uint8_t choice = 0;

  friend bool operator==(const Detour&, const Detour&) = default;
  /// The easier one first, of equally easy ones the one that comes first in the line.
  friend bool operator<(const Detour& left, const Detour& right) noexcept {
    return std::tie(left.harder, left.at, left.choice) <
           std::tie(right.harder, right.at, right.choice);
  }
};

/// A stretch of a path that differs from the easiest one, at its first grip and at its last.
struct Stretch {
  std::size_t begin = 0;
  std::vector<std::uint8_t> choices;

  [[nodiscard]] std::size_t end() const noexcept { return begin + choices.size(); }
};

/// For every grip and every choice that the easiest path has not there, the easiest path that has
/// it: exact, and in time and memory that grow with the line. All that is given outlives it.
class Detours {
 public:
  Detours(const LineCosts& costs, const Remaining& remaining, const Path& easiest);

  /// The easiest ones of the line, the easiest first, so many at most.
  [[nodiscard]] std::vector<Detour> easiest(std::size_t most) const;
  /// Those at one grip, the easiest first.
  [[nodiscard]] std::vector<Detour> at(std::size_t grip) const;
  /// Where the path of a detour differs from the easiest.
  [[nodiscard]] Stretch stretch(const Detour& detour) const;

 private:
  [[nodiscard]] std::size_t count_before(std::size_t grip) const noexcept {
    return grip == 0 ? 1 : costs_.choice_count(grip - 1);
  }
  [[nodiscard]] std::int64_t spent(std::size_t grip, std::size_t middle,
                                   std::size_t choice) const noexcept {
    return spent_[begins_[grip] + middle * costs_.choice_count(grip) + choice];
  }
  [[nodiscard]] std::int64_t whole(std::size_t grip, std::size_t middle,
                                   std::size_t choice) const noexcept {
    return spent(grip, middle, choice) + remaining_.after(grip, middle, choice);
  }
  void spend(CostMemo& memo, std::size_t grip);
  void spend_on_steps(CostMemo& memo, std::size_t grip);
  [[nodiscard]] std::size_t best_before(std::size_t grip, std::size_t choice) const;
  void go_back(std::size_t grip, std::size_t middle, Stretch& stretch) const;
  void go_on(Stretch& stretch) const;
  [[nodiscard]] std::uint8_t taken(const Stretch& stretch, std::size_t grip) const noexcept;

  const LineCosts& costs_;
  const Remaining& remaining_;
  const Path& easiest_;
  std::vector<std::size_t> begins_;
  std::vector<std::int64_t> spent_;  ///< up to each two neighbouring choices, the least
};

}  // namespace fingerturn
