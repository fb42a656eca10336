#pragma once

#include "fingerturn/score.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

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
  quick_move,
  slow_move,
  off_triad,
  opening_finger,
  finger_over_two,
  finger_in_chords,
  off_handbook,
  off_figure,
  off_printed,
  off_repeat,
  off_sequence,
  avoided_pair,
};
inline constexpr std::size_t kTermCount = 38;

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

/// The terms whose amounts stand in tables: a number for each pair of fingers in each situation.
inline constexpr std::array kTableTerms{Term::opening_finger, Term::finger_over_two,
                                        Term::finger_in_chords};

/// Amounts are counted in parts of one, so that a mean over up to six notes and a quarter of a
/// white key are whole numbers. So difficulties are exact, and equal ones are really equal.
inline constexpr std::int32_t kOne = 240;

/// What difficulties are added up in, parts of a thousandth, for one.
inline constexpr double kDifficultyUnit = 1000.0 * kOne;

/// The amounts of the table terms, in parts of one; tables.hpp says where each stands.
inline constexpr std::size_t kTableSize = 4090;
using Tables = std::array<std::int16_t, kTableSize>;

/// All numbers that difficulty is counted with.
struct Model {
  Weights weights{};
  Tables tables{};
};

/// Pairs of fingers, in either order.
class FingerPairs {
 public:
  constexpr void add(Finger one, Finger other) noexcept { bits_ |= bit(one, other); }
  [[nodiscard]] constexpr bool contains(Finger one, Finger other) const noexcept {
    return (bits_ & bit(one, other)) != 0;
  }

 private:
  static constexpr std::uint32_t bit(Finger one, Finger other) noexcept {
    const unsigned lower = one < other ? one : other;
    const unsigned higher = one < other ? other : one;
    return 1U << (lower * 5U + higher - 6U);
  }

  std::uint32_t bits_ = 0;
};

/// What was counted, for whoever wants to know more than the sum.
struct Counted {
  /// An entry of the tables, and one part of how many it was.
  struct Entry {
    std::size_t at = 0;
    std::int32_t parts = 1;
  };

  std::array<std::int32_t, kTermCount> amounts{};
  std::vector<Entry> entries;
};

/// Sums up what is difficult, in parts of a thousandth.
class Tally {
 public:
  /// Where something to count in is given, each amount is added up there as well.
  Tally(const Weights& weights, const Tables& tables, FingerPairs avoided = {},
        Counted* counted = nullptr) noexcept
      : weights_(weights), tables_(tables), avoided_(avoided), counted_(counted) {}

  [[nodiscard]] FingerPairs avoided() const noexcept { return avoided_; }

  void add(Term term, std::int32_t amount) noexcept {
    const auto at = static_cast<std::size_t>(term);
    difficulty_ += std::int64_t{weights_[at]} * amount;
    if (counted_ != nullptr) counted_->amounts[at] += amount;
  }

  /// Adds what stands in the tables, or one part of it.
  void add_entry(Term term, std::size_t entry, std::int32_t parts = 1) {
    add(term, tables_[entry] / parts);
    if (counted_ != nullptr) counted_->entries.push_back({entry, parts});
  }

  [[nodiscard]] std::int64_t difficulty() const noexcept { return difficulty_; }

 private:
  const Weights& weights_;
  const Tables& tables_;
  FingerPairs avoided_;
  Counted* counted_;
  std::int64_t difficulty_ = 0;
};

}  // namespace fingerturn
