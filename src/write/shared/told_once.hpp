#pragma once

#include "fingerturn/analysed.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace fingerturn {

/// What one or several findings of a hand say.
struct ToldOnce {
  const Finding* finding = nullptr;  ///< the first of them
  std::string message;               ///< theirs; rows of missing fingers are counted together
  std::vector<std::int32_t> again;   ///< the bars of the others, rising, each once
  std::vector<std::int32_t> bars;    ///< of all; of rows of missing fingers the first
};

/// The watch list of a hand, in which the same sentence stands once. Several rows of missing
/// fingers are one entry, with their share of the hand's events.
struct WatchTold {
  std::vector<ToldOnce> entries;
  std::vector<std::size_t> entry_of;  ///< for each finding of the line its entry
};
WatchTold told_once(const AnalysedLine& line);

/// "bar 3", "bars 3, 5 and 7", "bars 3, 5, 7, 9, 11, 13, 15, 17 and 4 more".
std::string bars_words(const std::vector<std::int32_t>& bars);

}  // namespace fingerturn
