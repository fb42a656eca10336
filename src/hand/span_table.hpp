#pragma once

#include "hand/spans.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>

namespace fingerturn {

/// The spans of every pair of fingers of one hand, ready to look up.
class SpanTable {
 public:
  explicit SpanTable(std::optional<int> reach_semitones);

  [[nodiscard]] const FingerSpans& of(Finger one, Finger other) const noexcept {
    return spans_[one][other];
  }
  /// Whether two fingers of one event can be so wide apart; `width` is counted from the key
  /// nearer to the thumb's side, on which `near` is. One finger takes two keys only where it is
  /// the thumb and they are neighbours.
  [[nodiscard]] bool is_practical(Finger near, Finger far, std::int32_t width) const noexcept;

 private:
  std::array<std::array<FingerSpans, kFifth + 1>, kFifth + 1> spans_{};
};

}  // namespace fingerturn
