#pragma once

#include "fingering/choices.hpp"
#include "fingering/difficulty.hpp"
#include "fingering/grips.hpp"
#include "fingering/terms.hpp"
#include "hand/spans.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>

namespace fingerturn {

/// A line that is to be fingered: all of it outlives what works on it.
struct FingerTask {
  std::span<const Grip> grips;
  const Choices& choices;
  const SpanTable& spans;
  const Weights& weights;
  const Tables& tables;
  FingerPairs avoided{};  ///< by the player's wish
};

/// What the choices of a line cost, in parts of a thousandth. Grips and choices are named by their
/// places.
class LineCosts {
 public:
  explicit LineCosts(const FingerTask& task) noexcept : task_(task) {}

  [[nodiscard]] std::size_t grip_count() const noexcept { return task_.grips.size(); }
  [[nodiscard]] const Grip& grip(std::size_t number) const noexcept { return task_.grips[number]; }
  [[nodiscard]] Fingered at(std::size_t grip, std::size_t choice) const noexcept {
    return {task_.grips[grip], task_.choices.of(grip)[choice]};
  }
  /// Of a term, in thousandths.
  [[nodiscard]] std::int32_t weight(std::size_t term) const noexcept {
    return task_.weights.at(term);
  }
  [[nodiscard]] std::size_t choice_count(std::size_t grip) const noexcept {
    return task_.choices.of(grip).size();
  }
  [[nodiscard]] std::int64_t alone(std::size_t grip, std::size_t choice) const noexcept;
  /// From the grip before to this one.
  [[nodiscard]] std::int64_t step(std::size_t grip, std::size_t before,
                                  std::size_t choice) const noexcept;
  /// Whether anything is counted from the grip before the one before.
  [[nodiscard]] bool counts_over_two(std::size_t grip) const noexcept;
  [[nodiscard]] std::int64_t over_two(std::size_t grip, std::size_t first,
                                      std::size_t choice) const noexcept;
  /// Whether anything is counted of the three grips that end here.
  [[nodiscard]] bool counts_three(std::size_t grip) const noexcept;
  [[nodiscard]] std::int64_t three(std::size_t grip, std::size_t first, std::size_t middle,
                                   std::size_t choice) const noexcept;
  /// All that one more grip adds, where the two before it are known; for the first two grips what
  /// does not exist is not looked at.
  [[nodiscard]] std::int64_t added(std::size_t grip, std::size_t first, std::size_t middle,
                                   std::size_t choice) const noexcept;
  /// How much of each term there is in what `added` sums up.
  [[nodiscard]] std::array<std::int32_t, kTermCount> amounts(std::size_t grip, std::size_t first,
                                                             std::size_t middle,
                                                             std::size_t choice) const;

 private:
  [[nodiscard]] Tally tally(Counted* counted = nullptr) const noexcept {
    return {task_.weights, task_.tables, task_.avoided, counted};
  }

  FingerTask task_;
};

}  // namespace fingerturn
