#include "rules/totals.hpp"

#include "rules/tempo.hpp"

#include <algorithm>
#include <cmath>

namespace fingerturn {
namespace {

std::size_t& count_of(Totals& totals, Rotation rotation) {
  switch (rotation) {
    case Rotation::preparatory:
      return totals.preparatory;
    case Rotation::single_rotation:
      return totals.single_rotations;
    case Rotation::double_rotation:
      return totals.double_rotations;
    case Rotation::level:
      return totals.level;
    case Rotation::undetermined:
      break;
  }
  return totals.undetermined;
}

void add_arm(const EventAnalysis& event, Totals& totals) {
  const double carry = std::abs(event.carry.value_or(0));
  totals.carried += carry;
  totals.largest_carry = std::max(totals.largest_carry, carry);
  if (event.in_out) ++(*event.in_out == InOut::in ? totals.moves_in : totals.moves_out);
  totals.full_swing_tempo = slower(totals.full_swing_tempo, event.full_swing_tempo);
}

bool is_fingered(const Event& event) {
  return std::all_of(event.notes.begin(), event.notes.end(),
                     [](const Note& note) { return note.held || note.finger; });
}

}  // namespace

Totals totals_of(const Line& line, std::span<const EventAnalysis> events) noexcept {
  Totals totals;
  std::size_t run = 0;
  for (const EventAnalysis& event : events) {
    ++totals.events;
    if (is_fingered(line.events[event.event])) ++totals.fingered;
    ++count_of(totals, event.rotation);
    totals.swings += static_cast<std::size_t>(event.swings.value_or(0));
    if (event.crossing != Crossing::none) ++totals.crossings;
    run = event.rotation == Rotation::double_rotation ? run + 1 : 0;
    totals.longest_double_run = std::max(totals.longest_double_run, run);
    add_arm(event, totals);
  }
  if (!events.empty()) totals.arcs = events.back().arc - events.front().arc + 1;
  return totals;
}

}  // namespace fingerturn
