#include "fingerturn/practice.hpp"
#include "rules/places.hpp"
#include "rules/repeats.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <span>
#include <utility>

namespace fingerturn {
namespace {

constexpr std::size_t kMostBars = 4;

/// The bars in which no hand plays on from the bar before.
std::vector<std::int32_t> fresh_bars(const AnalysedPassage& passage) {
  std::map<std::int32_t, bool> goes_on;
  for (const AnalysedLine line : passage) {
    for (std::size_t i = 0; i < line.size(); ++i) {
      const auto& [written, found] = line[i];
      if (i == 0 || line[i - 1].written.bar == written.bar) continue;
      goes_on[written.bar] |= line[i - 1].found.gesture == found.gesture;
    }
  }
  std::vector<std::int32_t> fresh;
  for (const auto& [bar, plays_on] : goes_on) {
    if (!plays_on) fresh.push_back(bar);
  }
  return fresh;
}

using Demand = std::span<const BarDemand>;

/// Where to part bars that are too many: evenly, or near that where a gesture ends.
std::size_t first_part_of(Demand bars, const std::vector<std::int32_t>& fresh) {
  if (bars.size() <= kMostBars) return bars.size();
  const std::size_t parts = (bars.size() + kMostBars - 1) / kMostBars;
  const std::size_t even = (bars.size() + parts - 1) / parts;
  for (const std::size_t count : {even, even - 1, even + 1}) {
    const bool fits = count > 1 && count <= kMostBars;
    if (fits && std::ranges::binary_search(fresh, bars[count].bar)) return count;
  }
  return even;
}

BarDemand sum_of(Demand bars) {
  BarDemand sum{.bar = bars.front().bar};
  for (const BarDemand& bar : bars) {
    sum.doubles += bar.doubles;
    sum.passings += bar.passings;
    sum.quick_passings += bar.quick_passings;
    sum.carries += bar.carries;
    sum.leaps += bar.leaps;
    sum.leap_points += bar.leap_points;
    sum.findings += bar.findings;
    sum.finding_points += bar.finding_points;
    sum.held += bar.held;
    sum.small_swings += bar.small_swings;
    sum.kinds_differ += bar.kinds_differ;
    sum.points += bar.points;
  }
  return sum;
}

/// Stretches that have the same music in all their bars are told as one: what comes again is parted
/// from what stands around it.
class StretchSearch {
 public:
  explicit StretchSearch(const AnalysedPassage& passage)
      : fresh_(fresh_bars(passage)), kinds_(bar_kinds(passage)) {}

  void add_neighbours(Demand bars) {
    while (!bars.empty()) {
      const std::size_t before = before_known(bars);
      const std::size_t known = before == 0 ? known_at(bars) : 0;
      const std::size_t count = known > 0 ? known : first_part_of(bars.first(before), fresh_);
      add(bars.first(count));
      bars = bars.subspan(count);
    }
  }

  std::vector<AskingStretch> take() {
    std::ranges::stable_sort(stretches_, std::greater<>{}, [](const AskingStretch& stretch) {
      return std::pair(stretch.most_points, stretch.asks.points);
    });
    return std::move(stretches_);
  }

 private:
  [[nodiscard]] std::vector<std::size_t> music_of(Demand bars) const {
    std::vector<std::size_t> music;
    for (const BarDemand& bar : bars) music.push_back(kinds_.at(bar.bar));
    return music;
  }

  /// How many of the first bars are the music of a stretch that is there already, the most.
  [[nodiscard]] std::size_t known_at(Demand bars) const {
    for (std::size_t count = std::min(kMostBars, bars.size()); count > 0; --count) {
      if (by_music_.contains(music_of(bars.first(count)))) return count;
    }
    return 0;
  }

  /// How many bars stand before such music; all, or as many as are looked at, where there is none.
  [[nodiscard]] std::size_t before_known(Demand bars) const {
    constexpr std::size_t kMostLookedAt = 4 * kMostBars;  // so that long music takes no longer
    const std::size_t most = std::min(kMostLookedAt, bars.size());
    std::size_t before = 0;
    while (before < most && known_at(bars.subspan(before)) == 0) ++before;
    return before;
  }

  void add(Demand bars) {
    const BarRange range{bars.front().bar, bars.back().bar};
    std::vector<std::size_t> music = music_of(bars);
    const auto [known, is_new] = by_music_.try_emplace(std::move(music), stretches_.size());
    if (!is_new) {
      stretches_[known->second].again.push_back(range);
      return;
    }
    const auto most = std::ranges::max(bars, {}, &BarDemand::points).points;
    stretches_.push_back({range, {}, sum_of(bars), most});
  }

  std::vector<std::int32_t> fresh_;
  std::map<std::int32_t, std::size_t> kinds_;
  std::map<std::vector<std::size_t>, std::size_t> by_music_;
  std::vector<AskingStretch> stretches_;
};

}  // namespace

std::vector<AskingStretch> asking_stretches(const AnalysedPassage& passage) {
  std::vector<BarDemand> asking;
  for (const PracticePlace& place : places_of(passage)) {
    asking.insert(asking.end(), place.asking.begin(), place.asking.end());
  }
  StretchSearch search(passage);
  for (std::size_t begin = 0, end = 0; begin < asking.size(); begin = end) {
    end = begin + 1;
    while (end < asking.size() && asking[end].bar == asking[end - 1].bar + 1) ++end;
    search.add_neighbours(Demand(asking).subspan(begin, end - begin));
  }
  return search.take();
}

}  // namespace fingerturn
