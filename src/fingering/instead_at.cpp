#include "fingering/instead_at.hpp"

#include <algorithm>
#include <cmath>

namespace fingerturn {
InsteadAt::InsteadAt(const Line& line, const LineCosts& costs, const Path& easiest,
                     std::size_t grip)
    : line_(line),
      costs_(costs),
      easiest_(easiest),
      grip_(grip),
      remaining_(costs),
      detours_(costs, remaining_, easiest) {}

InsteadAt::Way InsteadAt::way_of(const Detour& detour) const {
  return {detour, detours_.stretch(detour)};
}

/// One for each note of the event; 0 where a key is merely held.
std::vector<Finger> InsteadAt::fingers(std::uint8_t choice) const {
  const Fingered here = costs_.at(grip_, choice);
  std::vector<Finger> found;
  for (const Note& note : line_.events[here.grip.event].notes) {
    const std::int32_t where = across(line_.hand, midi_number(note.pitch));
    Finger finger = 0;
    for (std::size_t key = 0; key < here.grip.count && !note.held; ++key) {
      if (here.grip.keys.at(key).across == where) finger = here.choice.strikes.at(key);
    }
    found.push_back(finger);
  }
  return found;
}

/// The easiest way that has the given fingers; the easiest of all where none has.
std::size_t InsteadAt::taken(const std::vector<Way>& ways, std::span<const Finger> given) const {
  for (std::size_t i = 0; i < ways.size(); ++i) {
    const std::vector<Finger> here = fingers(ways[i].detour.choice);
    const auto fits = [](Finger wanted, Finger finger) { return wanted == 0 || wanted == finger; };
    if (std::equal(given.begin(), given.end(), here.begin(), here.end(), fits)) return i;
  }
  return 0;
}

FingersInstead InsteadAt::found(std::span<const Finger> given) const {
  std::vector<Way> ways{{{0, grip_, easiest_.choices[grip_]}, {grip_, {}}}};
  for (const Detour& detour : detours_.at(grip_)) ways.push_back(way_of(detour));
  const std::size_t chosen = taken(ways, given);
  FingersInstead instead{fingers(ways[chosen].detour.choice), {}};
  for (std::size_t i = 0; i < ways.size() && instead.others.size() < kMostOthers; ++i) {
    OtherFingers other = compared(ways[chosen], ways[i]);
    // Only a key that sounds on would have another finger.
    const auto is_same = [&](const OtherFingers& each) { return each.fingers == other.fingers; };
    if (other.fingers == instead.taken || std::ranges::any_of(instead.others, is_same)) continue;
    instead.others.push_back(std::move(other));
  }
  return instead;
}

void InsteadAt::add_amounts(const Way& way, std::size_t begin, std::size_t end, std::int32_t sign,
                            std::array<std::int32_t, kTermCount>& sum) const {
  const auto choice = [&](std::size_t grip, std::size_t back) -> std::size_t {
    if (grip < back) return 0;
    const std::size_t at = grip - back;
    const bool inside = way.stretch.begin <= at && at < way.stretch.end();
    return inside ? way.stretch.choices[at - way.stretch.begin] : easiest_.choices[at];
  };
  for (std::size_t grip = begin; grip < end; ++grip) {
    const auto amounts = costs_.amounts(grip, choice(grip, 2), choice(grip, 1), choice(grip, 0));
    for (std::size_t term = 0; term < kTermCount; ++term) sum.at(term) += sign * amounts.at(term);
  }
}

OtherFingers InsteadAt::compared(const Way& taken, const Way& other) const {
  constexpr std::size_t kAfter = 2;  // grips that a finger still counts for
  const std::size_t begin = std::min(taken.stretch.begin, other.stretch.begin);
  const std::size_t end =
      std::min(costs_.grip_count(), std::max(taken.stretch.end(), other.stretch.end()) + kAfter);
  std::array<std::int32_t, kTermCount> sum{};
  add_amounts(other, begin, end, 1, sum);
  add_amounts(taken, begin, end, -1, sum);
  OtherFingers found{
      fingers(other.detour.choice),
      static_cast<double>(other.detour.harder - taken.detour.harder) / kDifficultyUnit,
      {}};
  for (std::size_t term = 0; term < kTermCount; ++term) {
    const double harder = static_cast<double>(costs_.weight(term)) * sum.at(term) / kDifficultyUnit;
    if (harder == 0) continue;
    found.terms.push_back({term_words()[term].id, term_words()[term].counts, harder});
  }
  std::ranges::stable_sort(found.terms,
                           [](const TermDifference& left, const TermDifference& right) {
                             return std::abs(left.harder) > std::abs(right.harder);
                           });
  return found;
}

}  // namespace fingerturn
