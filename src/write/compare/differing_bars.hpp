#pragma once

#include "fingerturn/compare.hpp"
#include "write/page/ribbon/ribbon.hpp"

#include <cstddef>
#include <deque>
#include <vector>

namespace fingerturn {

/// The bars of a comparison in which some hand is not played alike in all fingerings, ready to be
/// set: the passage of the first fingering with nothing found but there, and for each hand that
/// plays there the ribbons of all fingerings. Nothing is copied but what was found.
class DifferingBars {
 public:
  /// The comparison must outlive it.
  explicit DifferingBars(const Comparison& comparison);
  ~DifferingBars() = default;

  DifferingBars(const DifferingBars&) = delete;
  DifferingBars& operator=(const DifferingBars&) = delete;

  [[nodiscard]] AnalysedPassage passage() const noexcept { return {*written_, first_}; }
  [[nodiscard]] const RibbonsOfHands& hands() const noexcept { return hands_; }
  /// Runs of bars that do not differ, rising.
  [[nodiscard]] const std::vector<BarRange>& alike() const noexcept { return alike_; }

 private:
  void find_bars(const Comparison& comparison);
  void add_hand(const HandComparison& hand);

  const Passage* written_;
  PassageAnalysis first_;
  std::deque<LineAnalysis> found_;  ///< what the ribbons view
  RibbonsOfHands hands_;
  std::vector<BarRange> differing_;
  std::vector<BarRange> alike_;
};

}  // namespace fingerturn
