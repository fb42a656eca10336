#pragma once

#include "fingering/costs.hpp"
#include "fingering/detours.hpp"
#include "fingering/paths.hpp"

#include <cstddef>

namespace fingerturn {

/// A path as it looks to the player. What is given outlives it.
class WayView {
 public:
  /// `base`, with a stretch of its own.
  WayView(const LineCosts& costs, const Path& base, const Stretch& own)
      : costs_(costs), base_(base), own_(own) {}

  [[nodiscard]] Fingered at(std::size_t grip) const noexcept {
    const bool inside = own_.begin <= grip && grip < own_.end();
    return costs_.at(grip, inside ? own_.choices[grip - own_.begin] : base_.choices[grip]);
  }
  /// Whether the thumb passes, or is passed, on the way from the single note before.
  [[nodiscard]] bool passes(std::size_t grip) const noexcept;
  /// The grip that the thumb has where it passes on the way to `grip`.
  [[nodiscard]] std::size_t thumb_at(std::size_t grip) const noexcept {
    return at(grip).choice.strikes[0] == kThumb ? grip : grip - 1;
  }
  [[nodiscard]] const Stretch& own() const noexcept { return own_; }

 private:
  const LineCosts& costs_;
  const Path& base_;
  const Stretch& own_;
};

/// The first key of a grip whose finger the player sees to differ; the number of keys where none.
std::size_t differing_key(const WayView& one, const WayView& other, std::size_t grip) noexcept;

}  // namespace fingerturn
