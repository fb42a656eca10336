#include "rules/totals.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fingerturn {
namespace {

constexpr double kNoTempo = std::numeric_limits<double>::infinity();

std::size_t& count_of(Totals& totals, Rotation rotation) {
  switch (rotation) {
    case Rotation::preparatory:
      return totals.preparatory;
    case Rotation::single_rotation:
      return totals.single_rotations;
    case Rotation::double_rotation:
      return totals.double_rotations;
    case Rotation::level:
      return totals.level_events;
    case Rotation::undetermined:
      break;
  }
  return totals.undetermined;
}

}  // namespace

void Count::add(const EventAnalysis& event, bool fingered) noexcept {
  if (counted_.events == 0 || event.arc != last_arc_) ++counted_.arcs;
  if (event.index != last_ + 1) double_run_ = 0;
  last_arc_ = event.arc;
  last_ = event.index;
  ++counted_.events;
  if (fingered) ++counted_.fingered;
  ++count_of(counted_, event.rotation);
  counted_.swings += static_cast<std::size_t>(event.swings.value_or(0));
  if (event.crossing != Crossing::none) ++counted_.crossings;
  double_run_ = event.rotation == Rotation::double_rotation ? double_run_ + 1 : 0;
  counted_.longest_double_run = std::max(counted_.longest_double_run, double_run_);
  const double carry = std::abs(event.carry.value_or(0));
  counted_.carried += carry;
  counted_.largest_carry = std::max(counted_.largest_carry, carry);
  if (event.in_out) ++(*event.in_out == InOut::in ? counted_.moves_in : counted_.moves_out);
  count_swings(event);
}

void Count::count_swings(const EventAnalysis& event) noexcept {
  if (event.full_swing_tempo.value_or(kNoTempo) < slowest_) {
    slowest_ = *event.full_swing_tempo;
    counted_.full_swing_event = event.event;
  }
  const std::optional<double> size = swing_size(event);
  if (!size || *size >= counted_.least_swing_size.value_or(kNoTempo)) return;
  counted_.least_swing_size = size;
  counted_.least_swing_event = event.event;
}

Totals Count::totals() const noexcept {
  Totals totals = counted_;
  if (slowest_ < kNoTempo) totals.full_swing_tempo = slowest_;
  return totals;
}

Totals totals_of(const Line& line, std::span<const EventAnalysis> events) noexcept {
  Count count;
  for (const EventAnalysis& event : events)
    count.add(event, line.events[event.event].is_fingered());
  return count.totals();
}

}  // namespace fingerturn
