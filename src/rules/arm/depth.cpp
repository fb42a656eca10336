#include "rules/arm/depth.hpp"

#include "hand/keyboard.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace fingerturn {
namespace {

struct Depths {
  int low;
  int high;
};

/// What each finger, from the thumb on, allows in quarters; source of all: our model (4.3).
constexpr std::array<Depths, 5> kOnWhite{{{0, 4}, {0, 2}, {0, 2}, {0, 2}, {0, 2}}};
constexpr std::array<Depths, 5> kOnBlack{{{4, 8}, {0, 4}, {0, 4}, {0, 4}, {2, 6}}};

const Depths& depths_of(Finger finger, KeyColour colour) noexcept {
  const std::size_t number = std::clamp(finger, kThumb, kFifth) - std::size_t{1};
  return colour == KeyColour::black ? kOnBlack.at(number) : kOnWhite.at(number);
}

Allowed depths_at(const Event& event) noexcept {
  Allowed allowed;
  for (const Note& note : event.notes) {
    if (note.held || !note.finger) continue;
    const Depths& depths = depths_of(*note.finger, key_colour(midi_number(note.pitch)));
    narrow(allowed, depths.low, depths.high, depths.low);
  }
  return allowed;
}

Allowed depths_at(const Line& line, const Strike& strike) noexcept {
  Allowed allowed;
  if (strike.arrival.known() && strike.is_single_note()) {
    const Depths& depths = depths_of(strike.arrival.lowest, key_colour(strike.key));
    narrow(allowed, depths.low, depths.high, depths.low);
  } else if (strike.arrival.known()) {
    allowed = depths_at(line.events[strike.event]);
    close_gap(allowed);
  }
  return allowed;
}

}  // namespace

std::vector<Allowed> depths_of_hand(const Line& line, std::span<const Strike> strikes) {
  std::vector<Allowed> depths;
  depths.reserve(strikes.size());
  for (const Strike& strike : strikes) {
    depths.push_back(depths_at(line, strike));
  }
  return depths;
}

bool has_no_common_depth(const Event& event) noexcept {
  const Allowed allowed = depths_at(event);
  return allowed.low > allowed.high;
}

std::vector<InAndOut> ins_and_outs(const Line& line, std::span<const Strike> strikes,
                                   std::optional<int>& place) {
  const std::vector<Allowed> depths = depths_of_hand(line, strikes);
  const std::vector<int> path = least_travel(depths, place);
  std::vector<InAndOut> found(strikes.size());
  for (std::size_t i = 0; i < strikes.size(); ++i) {
    if (!depths[i].known) continue;
    found[i].depth = static_cast<double>(path[i]) / kQuartersInKey;
    if (place && *place != path[i]) found[i].move = path[i] > *place ? InOut::in : InOut::out;
    place = path[i];
  }
  return found;
}

}  // namespace fingerturn
