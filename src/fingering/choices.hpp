#pragma once

#include "fingering/grips.hpp"
#include "hand/spans.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace fingerturn {

/// One way to finger a grip.
struct Choice {
  std::array<Finger, kMostKeys> strikes{};  ///< the finger that takes each key
  std::array<Finger, kMostKeys> leaves{};   ///< the finger on it when the hand plays on
  /// Where finger 0 would be if the hand lay relaxed, in parts of a white key (kOne is a whole).
  std::int32_t place_struck = 0;
  std::int32_t place_left = 0;
};

/// The ways to finger each grip of a line, one after another.
class Choices {
 public:
  Choices(std::span<const Grip> grips, const SpanTable& spans);

  [[nodiscard]] std::span<const Choice> of(std::size_t grip) const noexcept {
    return std::span(choices_).subspan(begins_[grip], begins_[grip + 1] - begins_[grip]);
  }

 private:
  std::vector<Choice> choices_;
  std::vector<std::size_t> begins_;
};

/// How many pairs of struck keys are beyond what is practical, with the best fingers.
int fewest_impractical_pairs(const Grip& grip, const SpanTable& spans);

/// The ways to finger a grip, lowest fingers first, never none: fingers rise toward the fifth's
/// side, the thumb may take two neighbouring keys, what is given stays. Of these only those with
/// the fewest pairs of struck keys beyond what is practical. Where the given fingers themselves do
/// not rise, the others take any finger that is left.
std::vector<Choice> choices_of(const Grip& grip, const SpanTable& spans);

}  // namespace fingerturn
