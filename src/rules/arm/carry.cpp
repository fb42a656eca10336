#include "rules/arm/carry.hpp"

#include "hand/keyboard.hpp"
#include "hand/spans.hpp"

#include <algorithm>
#include <cstddef>

namespace fingerturn {
namespace {

/// How far a finger reaches from its own key without the arm, in quarters of a white key.
struct Reach {
  int outward = kQuartersInKey;  ///< away from the middle of the hand
  int inward = kQuartersInKey;
};

/// Source of the numbers: our model (4.2).
Reach reach_of(Finger finger, std::optional<int> reach_semitones) noexcept {
  constexpr int kThumbOutward = 10;
  constexpr int kFifthOutward = 6;
  Reach reach;
  if (finger == kFifth) reach.outward = kFifthOutward;
  if (finger == kThumb) {
    const int semitones = reach_semitones.value_or(kPublishedReach);
    reach.outward =
        kThumbOutward * std::clamp(semitones, kSmallestReach, kWidestReach) / kPublishedReach;
  }
  return reach;
}

/// Seen from the hand: places grow toward its fifth finger.
void place_finger(int key_place, Finger finger, std::optional<int> reach_semitones,
                  Allowed& allowed) noexcept {
  constexpr int kMiddleFinger = 3;
  const int home = key_place - (finger - kMiddleFinger) * kQuartersInKey;
  const auto [outward, inward] = reach_of(finger, reach_semitones);
  const bool is_thumb_side = finger < kMiddleFinger;
  // A key further out on the thumb's side is reached by a hand that lies further to the fifth.
  narrow(allowed, home - (is_thumb_side ? inward : outward),
         home + (is_thumb_side ? outward : inward), home);
}

Allowed places_at(const Line& line, const Strike& strike, std::optional<int> reach_semitones) {
  const int side = line.hand == Hand::right ? 1 : -1;
  Allowed allowed;
  if (!strike.arrival.known()) return allowed;
  for (const Note& note : line.events[strike.event].notes) {
    if (note.held) continue;
    place_finger(side * place_of_key(midi_number(note.pitch)), *note.finger, reach_semitones,
                 allowed);
  }
  close_gap(allowed);
  return allowed;
}

}  // namespace

std::vector<Allowed> places_of_hand(const Line& line, std::span<const Strike> strikes,
                                    std::optional<int> reach_semitones) {
  std::vector<Allowed> places;
  places.reserve(strikes.size());
  for (const Strike& strike : strikes) places.push_back(places_at(line, strike, reach_semitones));
  return places;
}

std::vector<std::optional<double>> carries(const Line& line, std::span<const Strike> strikes,
                                           std::optional<int> reach_semitones,
                                           std::optional<int>& place) {
  const int side = line.hand == Hand::right ? 1 : -1;
  const std::vector<Allowed> places = places_of_hand(line, strikes, reach_semitones);
  const std::vector<int> path = least_travel(places, place);
  std::vector<std::optional<double>> moves(strikes.size());
  for (std::size_t i = 0; i < strikes.size(); ++i) {
    if (!places[i].known) continue;
    moves[i] = static_cast<double>(side * (path[i] - place.value_or(path[i]))) / kQuartersInKey;
    place = path[i];
  }
  return moves;
}

}  // namespace fingerturn
