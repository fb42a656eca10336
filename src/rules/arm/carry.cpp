#include "rules/arm/carry.hpp"

#include "hand/keyboard.hpp"

#include <cstddef>

namespace fingerturn {
namespace {

constexpr int kMiddleFinger = 3;

void place_finger(Hand hand, int midi, Finger finger, Allowed& allowed) noexcept {
  constexpr int kReach = kQuartersInKey;
  const int side = hand == Hand::right ? 1 : -1;
  const int place = place_of_key(midi) - side * (finger - kMiddleFinger) * kQuartersInKey;
  narrow(allowed, place - kReach, place + kReach);
}

Allowed places_at(const Line& line, const Strike& strike) {
  Allowed allowed;
  allowed.opens = strike.separated;
  if (!strike.arrival.known()) return allowed;
  if (strike.is_single_note()) {
    place_finger(line.hand, strike.key, strike.arrival.lowest, allowed);
  } else {
    for (const Note& note : line.events[strike.event].notes) {
      if (!note.held) place_finger(line.hand, midi_number(note.pitch), *note.finger, allowed);
    }
    close_gap(allowed);
  }
  allowed.unmoved = (allowed.low + allowed.high) / 2;
  return allowed;
}

}  // namespace

std::vector<Allowed> places_of_hand(const Line& line, std::span<const Strike> strikes) {
  std::vector<Allowed> places;
  places.reserve(strikes.size());
  for (const Strike& strike : strikes) places.push_back(places_at(line, strike));
  return places;
}

std::vector<std::optional<double>> carries(const Line& line, std::span<const Strike> strikes,
                                           std::optional<int>& place) {
  const std::vector<Allowed> places = places_of_hand(line, strikes);
  const std::vector<int> path = least_travel(places, place);
  std::vector<std::optional<double>> moves(strikes.size());
  for (std::size_t i = 0; i < strikes.size(); ++i) {
    if (!places[i].known) continue;
    moves[i] = static_cast<double>(path[i] - place.value_or(path[i])) / kQuartersInKey;
    place = path[i];
  }
  return moves;
}

}  // namespace fingerturn
