#pragma once

#include "fingerturn/report.hpp"
#include "write/notated/bars.hpp"
#include "write/page/ribbon/ribbon.hpp"
#include "write/page/staff/moments.hpp"
#include "write/page/staff/spacing.hpp"
#include "write/page/staff/staff.hpp"

#include <cstddef>
#include <cstdint>
#include <deque>
#include <optional>
#include <vector>

/// The systems of a page: staves and ribbons, filled to the margin with whole bars.
namespace fingerturn {

/// A system; its upper left corner is at 0.
struct System {
  double width = 0;
  double height = 0;
  Inks inks;
  std::int32_t first_bar = 0;
  std::int32_t last_bar = 0;
};

/// The numbers of the findings, by the events of each line.
using WatchNumbersOfLines = std::vector<WatchNumbers>;

/// Makes the systems of lines of a passage, one after another. Two lines must have all their
/// onsets.
class SystemMaker {
 public:
  /// The passage and the numbers must outlive it. `width` is in staff spaces.
  SystemMaker(const AnalysedPassage& passage, const SharedLines& lines,
              const WatchNumbersOfLines& watch, double width, const MusicStyle& style = {});
  /// The same with several ribbons for each hand: fingerings of the same notes, the first being
  /// those of the passage. They are named by letters.
  SystemMaker(const AnalysedPassage& passage, RibbonsOfHands hands,
              const WatchNumbersOfLines& watch, double width, const MusicStyle& style = {});

  /// The next system; none after the last.
  std::optional<System> next();

 private:
  struct Row;

  bool has_bar(std::size_t number);
  bool add_next();
  void add_parts(MeasuredBar bar);
  void add_repeats_before(std::int32_t bar);
  [[nodiscard]] std::vector<BarEnds> ends_of(std::size_t count);
  [[nodiscard]] double begin_of_first();
  std::size_t bars_that_fit();
  /// Where the first bar would end, were it no longer than so many moments.
  [[nodiscard]] double end_of_first(std::size_t moments);
  void split_first();
  [[nodiscard]] Row justified(std::size_t count);

  RibbonsOfHands hands_;
  const WatchNumbersOfLines& watch_;
  const ScoreSigns& signs_;
  const std::vector<BarsAgain>& again_;
  std::size_t named_ = 0;  ///< how many of those that come again are named already
  double width_;
  MusicStyle style_;
  NotatedBars bars_;
  std::vector<Readings> readings_;
  std::size_t read_ = 0;
  std::vector<Reading> last_readings_;  ///< of the last bar that was read
  std::deque<MeasuredBar> waiting_;
  std::vector<OpenBows> open_;
  KeySignature key_;
};

}  // namespace fingerturn
