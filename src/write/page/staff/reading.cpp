#include "write/page/staff/reading.hpp"

#include <algorithm>
#include <array>

namespace fingerturn {
namespace {

constexpr std::size_t kReadings = 4;
constexpr double kChange = 7;       // of clef
constexpr double kOtherClef = 1.5;  // to begin with the other hand's
constexpr double kOctaveSign = 2;   // for a bar
constexpr int kSteps = 7;
constexpr int kLowestTreble = 30;  // E4, in steps above C0
constexpr int kLowestBass = 18;    // G2

using Costs = std::array<double, kReadings>;
using Ways = std::array<std::uint8_t, kReadings>;

/// What a note costs a reader: ledger lines, more of them more each.
double cost_of(int position) {
  const int lines = position < 0 ? -position / 2 : position > 8 ? (position - 8) / 2 : 0;
  constexpr int kEasy = 2;
  const double hard = std::max(0, lines - kEasy);
  return 0.15 * lines + hard * hard;
}

Costs costs_of(const BarColumns& columns, std::size_t line) {
  constexpr double kMost = 60;
  Costs costs{0, kOctaveSign, 0, kOctaveSign};
  for (const Column& column : columns.columns) {
    if (!column.events[line]) continue;
    for (const Note& note : column.events[line]->event->notes) {
      for (std::size_t i = 0; i < kReadings; ++i) {
        costs[i] += cost_of(staff_position(note.pitch, static_cast<Reading>(i)));
      }
    }
  }
  for (double& cost : costs) cost = std::min(cost, kMost);
  return costs;
}

double change_between(std::size_t before, std::size_t after) {
  const bool same_clef =
      clef_of(static_cast<Reading>(before)) == clef_of(static_cast<Reading>(after));
  if (same_clef) return before == after ? 0 : 1;
  return kChange;
}

/// The cheapest way through all bars, added bar by bar.
class CheapestWay {
 public:
  explicit CheapestWay(Hand hand) {
    if (hand == Hand::right) total_ = {0, 0, kOtherClef, kOtherClef};
    if (hand == Hand::left) total_ = {kOtherClef, kOtherClef, 0, 0};
  }

  void add(const Costs& costs) {
    Costs next{};
    Ways ways{};
    for (std::size_t now = 0; now < kReadings; ++now) {
      std::size_t best = now;
      for (std::size_t before = 0; before < kReadings; ++before) {
        if (total_[before] + change_between(before, now) <
            total_[best] + change_between(best, now)) {
          best = before;
        }
      }
      ways[now] = static_cast<std::uint8_t>(best);
      next[now] = total_[best] + (ways_.empty() ? 0 : change_between(best, now)) + costs[now];
    }
    total_ = next;
    ways_.push_back(ways);
  }

  [[nodiscard]] Readings take() const {
    Readings readings(ways_.size());
    auto at = static_cast<std::size_t>(std::ranges::min_element(total_) - total_.begin());
    for (std::size_t bar = ways_.size(); bar-- > 0;) {
      readings[bar] = static_cast<Reading>(at);
      at = ways_[bar][at];
    }
    return readings;
  }

 private:
  Costs total_{};
  std::vector<Ways> ways_;
};

}  // namespace

int staff_position(Pitch pitch, Reading reading) noexcept {
  const int lowest = clef_of(reading) == Glyph::g_clef ? kLowestTreble : kLowestBass;
  return letter_position(pitch) - lowest - kSteps * octaves_of(reading);
}

std::vector<Readings> readings_of(const BarSequence& sequence) {
  std::vector<CheapestWay> ways;
  for (const AnalysedLine& line : sequence.lines()) ways.emplace_back(line.hand());
  for (std::size_t bar = 0; bar < sequence.size(); ++bar) {
    const BarColumns columns = sequence[bar];
    for (std::size_t line = 0; line < ways.size(); ++line) ways[line].add(costs_of(columns, line));
  }
  std::vector<Readings> readings;
  readings.reserve(ways.size());
  for (const CheapestWay& way : ways) readings.push_back(way.take());
  return readings;
}

}  // namespace fingerturn
