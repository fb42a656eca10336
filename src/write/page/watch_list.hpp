#pragma once

#include "fingerturn/analysed.hpp"
#include "write/page/ribbon/ribbon.hpp"
#include "write/shared/told_once.hpp"

#include <vector>

namespace fingerturn {

/// What is to be watched, as a page numbers it.
struct WatchItem {
  Hand hand = Hand::right;
  ToldOnce told;
};

struct PageWatchList {
  std::vector<WatchItem> items;                ///< what asks for care, the first with the number 1
  std::vector<WatchItem> remarks;              ///< what is said for information
  std::vector<WatchNumbers> numbers_of_lines;  ///< of the items, on the events of each line
};

PageWatchList watch_list_of(const AnalysedPassage& passage);

}  // namespace fingerturn
