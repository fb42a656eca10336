#include "fingering/repeats.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <limits>
#include <map>
#include <numeric>
#include <optional>
#include <unordered_map>
#include <utility>

namespace fingerturn {
namespace {

using Number = std::uint64_t;

/// Mixes a number into others, so that what differs has another sum: of 64 bits, that two agree by
/// chance is not to be expected, and would do no more than suggest a finger.
Number mixed(Number sum, Number more) noexcept {
  constexpr Number kOdd = 0x9E3779B97F4A7C15;
  sum ^= more + kOdd + (sum << 6U) + (sum >> 2U);
  return sum * 0xFF51AFD7ED558CCD;
}

Number number_of(std::optional<Fraction> fraction) noexcept {
  if (!fraction) return 1;
  return mixed(static_cast<Number>(fraction->numerator),
               static_cast<Number>(fraction->denominator));
}

/// What is said of a grip by itself, and of the way to it.
struct Token {
  Number shape = 0;
  Number step = 0;
};

class Tokens {
 public:
  Tokens(const Line& line, const std::vector<Grip>& grips) : line_(line), grips_(grips) {
    for (std::size_t at = 0; at < grips.size(); ++at) tokens_.push_back({shape(at), step(at)});
  }

  [[nodiscard]] std::size_t size() const { return tokens_.size(); }

  /// How far two stretches are alike that begin at these grips, the earlier one ending before the
  /// later one begins.
  [[nodiscard]] std::size_t alike(std::size_t from, std::size_t at) const {
    std::size_t length = 0;
    while (from + length < at && at + length < size() && is_alike(from, at, length)) ++length;
    return length;
  }

  [[nodiscard]] Number of_group(std::size_t at, std::size_t length) const {
    Number sum = tokens_[at].shape;
    for (std::size_t i = 1; i < length; ++i) {
      sum = mixed(mixed(sum, tokens_[at + i].shape), tokens_[at + i].step);
    }
    return sum;
  }

  [[nodiscard]] bool is_on_beat(std::size_t at) const {
    const Event& event = line_.events[grips_[at].event];
    if (!event.onset) return true;
    constexpr std::int64_t kEighth = 8;
    return kEighth * event.onset->numerator % event.onset->denominator == 0;
  }

 private:
  [[nodiscard]] bool is_alike(std::size_t from, std::size_t at, std::size_t step) const {
    const Token& earlier = tokens_[from + step];
    const Token& later = tokens_[at + step];
    return earlier.shape == later.shape && (step == 0 || earlier.step == later.step);
  }

  [[nodiscard]] Number shape(std::size_t at) const {
    const Grip& grip = grips_[at];
    Number sum = grip.count;
    for (std::size_t i = 0; i < grip.count; ++i) {
      const GripKey& key = grip.keys[i];
      sum = mixed(sum, static_cast<Number>(key.place - grip.keys[0].place));
      sum = mixed(sum, (key.black ? 2U : 0U) + (key.struck ? 1U : 0U));
    }
    const Event& event = line_.events[grip.event];
    return mixed(sum, event.grace ? 3 : number_of(event.duration));
  }

  [[nodiscard]] Number step(std::size_t at) const {
    if (at == 0) return 0;
    const auto way = static_cast<Number>(grips_[at].keys[0].place - grips_[at - 1].keys[0].place);
    return mixed(way, grips_[at].opens ? 1 : 0);
  }

  const Line& line_;
  const std::vector<Grip>& grips_;
  std::vector<Token> tokens_;
};

constexpr std::size_t kFewestInGroup = 4;

class GroupSearch {
 public:
  explicit GroupSearch(const Tokens& tokens) : tokens_(tokens) {}

  std::vector<GroupAgain> found() {
    std::vector<GroupAgain> groups;
    for (std::size_t at = 0; at + kFewestInGroup <= tokens_.size();) {
      if (!tokens_.is_on_beat(at)) {
        ++at;
        continue;
      }
      std::vector<std::size_t>& earlier = places_[tokens_.of_group(at, kFewestInGroup)];
      const GroupAgain group = longest(earlier, at);
      if (earlier.size() < kMostTried) earlier.push_back(at);
      if (group.length >= kFewestInGroup) groups.push_back(group);
      at += std::max<std::size_t>(1, group.length);
    }
    return groups;
  }

 private:
  static constexpr std::size_t kMostTried = 8;

  [[nodiscard]] GroupAgain longest(const std::vector<std::size_t>& earlier, std::size_t at) const {
    GroupAgain best{at, 0, 0};
    for (const std::size_t from : earlier) {
      const std::size_t length = tokens_.alike(from, at);
      if (length > best.length) best = {at, from, length};
    }
    return best.length >= kFewestInGroup ? best : GroupAgain{at, 0, 0};
  }

  const Tokens& tokens_;
  std::unordered_map<Number, std::vector<std::size_t>> places_;
};

/// The fingers that are given to the keys of a grip wherever its group comes.
class GivenInGroup {
 public:
  void add(const Grip& grip, std::size_t at) {
    for (std::size_t i = 0; i < grip.count; ++i) {
      const Finger given = grip.keys.at(i).given;
      if (given == 0) continue;
      Finger& known = fingers_.at(i);
      known = known == 0 || known == given ? given : kDiffers;
      place_ = std::min(place_, at);
    }
  }
  /// 0 where none is given, or several differ.
  [[nodiscard]] Finger finger(std::size_t key) const {
    return fingers_.at(key) == kDiffers ? Finger{0} : fingers_.at(key);
  }
  /// The first grip that has one.
  [[nodiscard]] std::size_t place() const noexcept { return place_; }

 private:
  static constexpr Finger kDiffers = 255;

  std::array<Finger, kMostKeys> fingers_{};
  std::size_t place_ = std::numeric_limits<std::size_t>::max();
};

/// How many places have each finger.
class Votes {
 public:
  void add(Finger finger) { ++votes_.at(finger); }
  /// The finger of most; of several the one that was found first.
  [[nodiscard]] Finger most(std::span<const Finger> found) const {
    const std::size_t most = *std::ranges::max_element(votes_);
    return *std::ranges::find_if(found, [&](Finger each) { return votes_.at(each) == most; });
  }
  [[nodiscard]] std::size_t count() const {
    return std::accumulate(votes_.begin(), votes_.end(), std::size_t{0});
  }

 private:
  std::array<std::size_t, 1 + kFifth> votes_{};
};

/// Marks one key of a group: what most of its places have that lie on the same key, where there are
/// two or more, else what most of all have.
void mark_most_found(std::span<const std::size_t> places, std::span<const FoundFingers> found,
                     std::size_t key, std::vector<Grip>& grips) {
  Votes all;
  std::map<std::int32_t, Votes> on_key;
  std::map<std::int32_t, std::vector<Finger>> fingers_on_key;
  std::vector<Finger> fingers;
  for (const std::size_t at : places) {
    const Finger finger = found[at].at(key);
    const std::int32_t where = grips[at].keys.at(key).across;
    all.add(finger);
    fingers.push_back(finger);
    on_key[where].add(finger);
    fingers_on_key[where].push_back(finger);
  }
  for (const std::size_t at : places) {
    GripKey& here = grips[at].keys.at(key);
    const Votes& same = on_key[here.across];
    here.again_on_key = same.count() > 1;
    here.again = here.again_on_key ? same.most(fingers_on_key[here.across]) : all.most(fingers);
  }
}

}  // namespace

std::vector<GroupAgain> groups_again(const Line& line, const std::vector<Grip>& grips) {
  const Tokens tokens(line, grips);
  return GroupSearch(tokens).found();
}

std::vector<std::size_t> first_places(const std::vector<GroupAgain>& groups, std::size_t grips) {
  if (groups.empty()) return {};
  std::vector<std::size_t> first(grips);
  std::iota(first.begin(), first.end(), std::size_t{0});
  for (const GroupAgain& group : groups) {
    for (std::size_t i = 0; i < group.length; ++i) first[group.begin + i] = first[group.from + i];
  }
  return first;
}

void mark_printed(const std::vector<std::size_t>& first, std::vector<Grip>& grips) {
  std::vector<GivenInGroup> given(first.size());
  for (std::size_t at = 0; at < first.size(); ++at) given[first[at]].add(grips[at], at);
  for (std::size_t at = 0; at < first.size(); ++at) {
    const GivenInGroup& of_group = given[first[at]];
    for (std::size_t i = 0; i < grips[at].count; ++i) {
      GripKey& key = grips[at].keys.at(i);
      if (!key.struck || key.given != 0) continue;
      key.printed = of_group.finger(i);
      if (key.printed != 0) grips[at].printed_at = of_group.place();
    }
  }
}

void mark_again(const std::vector<std::size_t>& first, std::span<const FoundFingers> found,
                std::vector<Grip>& grips) {
  std::vector<std::size_t> together(first.size());
  std::iota(together.begin(), together.end(), std::size_t{0});
  std::ranges::stable_sort(together, {}, [&first](std::size_t at) { return first[at]; });
  for (auto begin = together.begin(); begin != together.end();) {
    const std::size_t group = first[*begin];
    const auto end =
        std::find_if(begin, together.end(), [&](std::size_t at) { return first[at] != group; });
    const std::size_t keys = end - begin > 1 ? grips[group].count : 0;
    for (std::size_t key = 0; key < keys; ++key) {
      mark_most_found({begin, end}, found, key, grips);
    }
    begin = end;
  }
}

}  // namespace fingerturn
