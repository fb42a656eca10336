#include "write/page/watch_list.hpp"

#include <utility>

namespace fingerturn {

PageWatchList watch_list_of(const AnalysedPassage& passage) {
  PageWatchList list;
  for (const AnalysedLine line : passage) {
    WatchTold told = told_once(line);
    std::vector<std::size_t> numbers;  // of the entries; 0 where one is only for information
    for (ToldOnce& entry : told.entries) {
      const bool asks_for_care = entry.finding->level != WatchLevel::info;
      (asks_for_care ? list.items : list.remarks).push_back({line.hand(), std::move(entry)});
      numbers.push_back(asks_for_care ? list.items.size() : 0);
    }
    WatchNumbers& of_line = list.numbers_of_lines.emplace_back();
    for (std::size_t i = 0; i < told.entry_of.size(); ++i) {
      const std::size_t number = numbers[told.entry_of[i]];
      if (number > 0) of_line.emplace(line.found().watch[i].event, number);
    }
  }
  return list;
}

}  // namespace fingerturn
