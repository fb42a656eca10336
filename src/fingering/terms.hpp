#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>

namespace fingerturn {

/// What makes a fingering difficult. The first twelve are the rules of Parncutt and others (1997),
/// the rest are ours; `term_words` says what each counts.
enum class Term : std::uint8_t {
  stretch,
  small_span,
  large_span,
  position_change_count,
  position_change_size,
  weak_finger,
  three_four_five,
  three_to_four,
  four_on_black,
  thumb_on_black,
  five_on_black,
  thumb_passing,
  third_finger,
  chord_span,
  chord_beyond_practical,
  same_finger,
  change_on_repeat,
  quick_repeat,
  quick_shift,
  slow_shift,
  far_shift,
  fingers_cross,
  change_while_held,
  finger_again,
  shift_over_two,
  shift_over_rest,
  off_handbook,
  off_figure,
  off_printed,
  off_repeat,
  off_sequence,
};
inline constexpr std::size_t kTermCount = 31;

/// What the documentation says of a term.
struct TermWords {
  std::string_view id;
  std::string_view counts;
  std::string_view source;
};

/// The words of all terms, in the order of the enumeration.
std::span<const TermWords> term_words() noexcept;

/// The weight of each term, in thousandths.
using Weights = std::array<std::int32_t, kTermCount>;

/// Amounts are counted in parts of one, so that a mean over up to six notes and a quarter of a
/// white key are whole numbers. So difficulties are exact, and equal ones are really equal.
inline constexpr std::int32_t kOne = 240;

/// Sums up what is difficult, in parts of a thousandth.
class Tally {
 public:
  using Amounts = std::array<std::int32_t, kTermCount>;

  /// Where amounts are given, each term is added up in them as well.
  explicit Tally(const Weights& weights, Amounts* amounts = nullptr) noexcept
      : weights_(weights), amounts_(amounts) {}

  void add(Term term, std::int32_t amount) noexcept {
    const auto at = static_cast<std::size_t>(term);
    difficulty_ += std::int64_t{weights_[at]} * amount;
    if (amounts_ != nullptr) (*amounts_)[at] += amount;
  }
  [[nodiscard]] std::int64_t difficulty() const noexcept { return difficulty_; }

 private:
  const Weights& weights_;
  Amounts* amounts_;
  std::int64_t difficulty_ = 0;
};

}  // namespace fingerturn
