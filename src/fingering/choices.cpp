#include "fingering/choices.hpp"

#include "fingering/terms.hpp"
#include "hand/keyboard.hpp"

#include <algorithm>
#include <limits>

namespace fingerturn {
namespace {

using Fingers = std::array<Finger, kMostKeys>;

/// Counts upward through the fingers of a grip's keys, nearest to the thumb first.
class Assigner {
 public:
  /// `rising`: all fingers rise; else those that are not given may be any, each for one key.
  Assigner(const Grip& grip, bool rising, bool avoid_given)
      : grip_(grip), rising_(rising), avoid_given_(avoid_given) {}

  std::vector<Fingers> all() {
    assign(0, kThumb);
    return std::move(found_);
  }

 private:
  void assign(std::size_t at, Finger least) {
    if (at == grip_.count) {
      found_.push_back(fingers_);
      return;
    }
    const Finger given = grip_.keys.at(at).given;
    if (given != 0 && !rising_) {
      take(at, given, kThumb);
      return;
    }
    if (thumb_takes_both(at) && (given == 0 || given == kThumb)) take(at, kThumb, least);
    for (Finger finger = least; finger <= kFifth; ++finger) {
      if (given != 0 && given != finger) continue;
      if (avoid_given_ && is_given(finger)) continue;
      if (!rising_ && is_taken(at, finger)) continue;
      take(at, finger, rising_ ? static_cast<Finger>(finger + 1) : kThumb);
    }
  }

  void take(std::size_t at, Finger finger, Finger least) {
    fingers_.at(at) = finger;
    assign(at + 1, least);
  }

  [[nodiscard]] bool thumb_takes_both(std::size_t at) const {
    if (at != 1 || !rising_ || fingers_[0] != kThumb) return false;
    const GripKey& outer = grip_.keys[0];
    const GripKey& inner = grip_.keys[1];
    return outer.struck == inner.struck && inner.across - outer.across <= kNeighbours;
  }

  /// Whether a key before this one that no finger is given for has this finger.
  [[nodiscard]] bool is_taken(std::size_t at, Finger finger) const {
    for (std::size_t i = 0; i < at; ++i) {
      if (grip_.keys.at(i).given == 0 && fingers_.at(i) == finger) return true;
    }
    return false;
  }

  [[nodiscard]] bool is_given(Finger finger) const {
    return std::any_of(grip_.keys.begin(), grip_.keys.begin() + grip_.count,
                       [finger](const GripKey& key) { return key.given == finger; });
  }

  const Grip& grip_;
  bool rising_;
  bool avoid_given_;
  Fingers fingers_{};
  std::vector<Fingers> found_;
};

std::vector<Fingers> assignments(const Grip& grip) {
  std::vector<Fingers> found = Assigner(grip, true, false).all();
  if (found.empty()) found = Assigner(grip, false, true).all();
  if (found.empty()) found = Assigner(grip, false, false).all();
  return found;
}

int impractical_pairs(const Grip& grip, const Fingers& fingers, const SpanTable& spans) noexcept {
  int count = 0;
  for (std::size_t i = 0; i < grip.count; ++i) {
    for (std::size_t j = i + 1; j < grip.count; ++j) {
      if (!grip.keys[i].struck || !grip.keys[j].struck) continue;
      const std::int32_t width = grip.keys[j].across - grip.keys[i].across;
      count += spans.is_practical(fingers[i], fingers[j], width) ? 0 : 1;
    }
  }
  return count;
}

int fewest_of(const Grip& grip, const std::vector<Fingers>& found, const SpanTable& spans) {
  int fewest = std::numeric_limits<int>::max();
  for (const Fingers& fingers : found) {
    fewest = std::min(fewest, impractical_pairs(grip, fingers, spans));
  }
  return fewest;
}

/// Where the hand lies: the mean over the struck keys, or over all where none is struck.
std::int32_t place_of(const Grip& grip, const Fingers& fingers) noexcept {
  constexpr std::int32_t kPartsInQuarter = kOne / kQuartersInKey;
  std::int32_t sum = 0;
  std::int32_t count = 0;
  for (std::size_t i = 0; i < grip.count; ++i) {
    if (!grip.keys[i].struck && grip.struck_count > 0) continue;
    sum += grip.keys[i].place - fingers[i] * kQuartersInKey;
    ++count;
  }
  return sum * (kPartsInQuarter / count);
}

Choice choice_of(const Grip& grip, const Fingers& fingers) noexcept {
  Choice choice;
  choice.strikes = choice.leaves = fingers;
  for (std::size_t i = 0; i < grip.count; ++i) {
    if (grip.keys[i].changed_to != 0) choice.leaves[i] = grip.keys[i].changed_to;
  }
  choice.place_struck = place_of(grip, choice.strikes);
  choice.place_left = place_of(grip, choice.leaves);
  return choice;
}

}  // namespace

int fewest_impractical_pairs(const Grip& grip, const SpanTable& spans) {
  return fewest_of(grip, assignments(grip), spans);
}

std::vector<Choice> choices_of(const Grip& grip, const SpanTable& spans) {
  const std::vector<Fingers> found = assignments(grip);
  const int fewest = fewest_of(grip, found, spans);
  std::vector<Choice> choices;
  for (const Fingers& fingers : found) {
    if (impractical_pairs(grip, fingers, spans) > fewest) continue;
    choices.push_back(choice_of(grip, fingers));
  }
  return choices;
}

Choices::Choices(std::span<const Grip> grips, const SpanTable& spans) {
  begins_.reserve(grips.size() + 1);
  begins_.push_back(0);
  for (const Grip& grip : grips) {
    const std::vector<Choice> choices = choices_of(grip, spans);
    choices_.insert(choices_.end(), choices.begin(), choices.end());
    begins_.push_back(choices_.size());
  }
}

}  // namespace fingerturn
