#pragma once

#include "fingering/costs.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <unordered_map>
#include <vector>

namespace fingerturn {

/// What all choices of neighbouring grips cost, remembered for grips that look the same from the
/// hand: music has few of them, and most of the time goes into counting. So much is remembered at a
/// time, whatever the length of the line.
class CostMemo {
 public:
  /// The costs must outlive it.
  explicit CostMemo(const LineCosts& costs) : costs_(costs) {}

  /// LineCosts::step of all choices before, and for each of these of all choices.
  const std::vector<std::int64_t>& step(std::size_t grip);
  /// LineCosts::over_two of all choices two grips before, and for each of these of all choices.
  const std::vector<std::int64_t>& over_two(std::size_t grip);
  /// LineCosts::three: of the first, for each of these of the middle, for each of these of all.
  const std::vector<std::int64_t>& three(std::size_t grip);

 private:
  struct Table {
    std::unordered_map<std::string, std::vector<std::int64_t>> counted;
    std::vector<std::int64_t> unremembered;
    std::size_t asked = 0;
    std::size_t known = 0;  ///< how often what was asked for was there
  };

  template <typename Count>
  const std::vector<std::int64_t>& remembered(Table& table, std::size_t first, std::size_t last,
                                              const Count& count);

  const LineCosts& costs_;
  std::string looks_;  ///< of the grips that are asked for
  Table steps_;
  Table over_two_;
  Table threes_;
};

}  // namespace fingerturn
