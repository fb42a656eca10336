#include "write/notated/ticks.hpp"

#include <algorithm>
#include <numeric>

namespace fingerturn {
namespace {

constexpr Ticks kMostInWhole = Ticks{1} << 30U;
constexpr std::int64_t kLongest = std::int64_t{1} << 30U;  // in whole notes
constexpr Ticks kShortestUnit = Ticks{1} << (kMostHalvings + 2);

class CommonTicks {
 public:
  void add(const std::optional<Fraction>& time) {
    known_ = known_ && time.has_value();
    if (known_) add(*time);
  }
  void add(Fraction time) {
    known_ =
        known_ && time.denominator <= kMostInWhole && time.numerator / time.denominator < kLongest;
    if (known_ && ticks_ % time.denominator != 0) ticks_ = std::lcm(ticks_, time.denominator);
    known_ = known_ && ticks_ <= kMostInWhole;
  }
  [[nodiscard]] std::optional<Ticks> found() const {
    return known_ ? std::optional(ticks_) : std::nullopt;
  }

 private:
  Ticks ticks_ = kShortestUnit;
  bool known_ = true;
};

}  // namespace

std::optional<Ticks> ticks_in_whole(const Passage& passage) {
  CommonTicks common;
  for (const Line& line : passage.lines) {
    for (const Event& event : line.events) {
      common.add(event.onset);
      common.add(event.duration);
      for (const Note& note : event.notes) {
        if (note.lasts) common.add(*note.lasts);
      }
    }
  }
  return common.found();
}

}  // namespace fingerturn
