#pragma once

#include "fingerturn/analysed.hpp"
#include "write/page/ribbon/ribbon.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace fingerturn {

/// What is to be watched, as a page numbers it: findings that say the same of a hand are one item.
struct WatchItem {
  Hand hand = Hand::right;
  const Finding* finding = nullptr;  ///< the first of them
  std::vector<std::int32_t> bars;    ///< rising, each once
};

struct PageWatchList {
  std::vector<WatchItem> items;                ///< what asks for care, the first with the number 1
  std::vector<WatchItem> remarks;              ///< what is said for information
  std::vector<WatchNumbers> numbers_of_lines;  ///< of the items, on the events of each line
};

PageWatchList watch_list_of(const AnalysedPassage& passage);

/// "bar 3", "bars 3, 5 and 7".
std::string bars_words(const std::vector<std::int32_t>& bars);

}  // namespace fingerturn
