#include "write/page/watch_list.hpp"

#include "text/words.hpp"

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace fingerturn {
namespace {

using Said = std::pair<std::string_view, std::string_view>;  // a rule and its sentence

/// Items of one hand after another; what says the same of a hand is one.
class Items {
 public:
  void begin(Hand hand) {
    hand_ = hand;
    numbers_.clear();
  }

  /// Adds a finding in a bar; gives its number.
  std::size_t add(const Finding& finding, std::int32_t bar) {
    const Said said{finding.rule, finding.message};
    const auto [place, is_new] = numbers_.try_emplace(said, items_.size());
    if (is_new) items_.push_back({hand_, &finding, {}});
    std::vector<std::int32_t>& bars = items_[place->second].bars;
    if (bars.empty() || bars.back() != bar) bars.push_back(bar);
    return place->second + 1;
  }

  std::vector<WatchItem> take() { return std::move(items_); }

 private:
  Hand hand_ = Hand::right;
  std::map<Said, std::size_t> numbers_;
  std::vector<WatchItem> items_;
};

}  // namespace

PageWatchList watch_list_of(const AnalysedPassage& passage) {
  PageWatchList list;
  Items items;
  Items remarks;
  for (const AnalysedLine line : passage) {
    items.begin(line.hand());
    remarks.begin(line.hand());
    WatchNumbers& numbers = list.numbers_of_lines.emplace_back();
    for (const Finding& finding : line.found().watch) {
      const std::int32_t bar = line.event_of(finding).bar;
      if (finding.level == WatchLevel::info) {
        remarks.add(finding, bar);
      } else {
        numbers.emplace(finding.event, items.add(finding, bar));
      }
    }
  }
  list.items = items.take();
  list.remarks = remarks.take();
  return list;
}

std::string bars_words(const std::vector<std::int32_t>& bars) {
  std::vector<std::string> numbers;
  for (const std::int32_t bar : bars) numbers.push_back(std::to_string(bar));
  return (bars.size() == 1 ? "bar " : "bars ") + enumerated(numbers);
}

}  // namespace fingerturn
