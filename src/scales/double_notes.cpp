#include "scales/double_notes.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <tuple>

namespace fingerturn {
namespace {

/// The fingers of two keys, the one nearer to the thumb's side first.
struct FingerPair {
  Finger near = 0;
  Finger far = 0;

  friend bool operator==(const FingerPair&, const FingerPair&) = default;
};

constexpr FingerPair kOneThree{1, 3};
constexpr FingerPair kTwoFour{2, 4};
constexpr FingerPair kThreeFive{3, 5};

/// The thirds of an octave in groups of three, two and two.
constexpr std::array<FingerPair, 7> kThirdGroups{kOneThree, kTwoFour,  kThreeFive, kOneThree,
                                                 kTwoFour,  kOneThree, kTwoFour};
/// Where the first third may stand in them, what is preferred first: at the beginning of a group.
constexpr std::array<std::size_t, 7> kGroupPlaces{0, 5, 3, 6, 4, 1, 2};

bool has_black(int key) { return key_colour(key) == KeyColour::black; }

/// Double notes as the hand has them: from the thumb's side to the fifth's.
class HandNotes {
 public:
  HandNotes(std::span<DoubleNote> rising, Hand hand) : rising_(rising), hand_(hand) {}

  [[nodiscard]] std::size_t size() const { return rising_.size(); }
  [[nodiscard]] int near_key(std::size_t at) const {
    return hand_ == Hand::right ? note(at).lower_key : note(at).upper_key;
  }
  [[nodiscard]] int far_key(std::size_t at) const {
    return hand_ == Hand::right ? note(at).upper_key : note(at).lower_key;
  }
  [[nodiscard]] FingerPair fingers(std::size_t at) const {
    const DoubleNote& each = note(at);
    return hand_ == Hand::right ? FingerPair{each.lower_finger, each.upper_finger}
                                : FingerPair{each.upper_finger, each.lower_finger};
  }
  void set(std::size_t at, FingerPair pair) {
    DoubleNote& each = rising_[place(at)];
    (hand_ == Hand::right ? each.lower_finger : each.upper_finger) = pair.near;
    (hand_ == Hand::right ? each.upper_finger : each.lower_finger) = pair.far;
  }

 private:
  [[nodiscard]] std::size_t place(std::size_t at) const {
    return hand_ == Hand::right ? at : rising_.size() - 1 - at;
  }
  [[nodiscard]] const DoubleNote& note(std::size_t at) const { return rising_[place(at)]; }

  std::span<DoubleNote> rising_;
  Hand hand_;
};

FingerPair group_pair(std::size_t begin, std::size_t at) {
  return kThirdGroups.at((begin + at) % kThirdGroups.size());
}

/// How many thumbs of the first so many notes would be on black keys, and how many fifth fingers.
template <typename PairAt>
std::tuple<int, int> black_ends(const HandNotes& notes, std::size_t count, PairAt pair_at) {
  int thumbs = 0;
  int fifths = 0;
  for (std::size_t at = 0; at < count; ++at) {
    const FingerPair pair = pair_at(at);
    if (pair.near == kThumb && has_black(notes.near_key(at))) ++thumbs;
    if (pair.far == kFifth && has_black(notes.far_key(at))) ++fifths;
  }
  return {thumbs, fifths};
}

FingerPair sixth_pair(std::size_t begin, std::size_t at) {
  constexpr FingerPair kOneFour{1, 4};
  constexpr FingerPair kTwoFive{2, 5};
  return (begin + at) % 2 == 0 ? kOneFour : kTwoFive;
}

/// At the thumb's side 2-4 takes the place of a 3-5 that nothing leads to. At the other side 3-5
/// closes after 2-4, if the fifth finger is on a white key.
void finish_ends(HandNotes& thirds) {
  if (thirds.fingers(0) == kThreeFive) thirds.set(0, kTwoFour);
  const std::size_t last = thirds.size() - 1;
  const bool follows = last > 0 && thirds.fingers(last - 1) == kTwoFour;
  if (follows && thirds.fingers(last) == kOneThree && !has_black(thirds.far_key(last))) {
    thirds.set(last, kThreeFive);
  }
}

}  // namespace

void finger_octaves(std::span<DoubleNote> rising, Hand hand) {
  constexpr Finger kFourth = 4;
  for (DoubleNote& note : rising) {
    const Finger far = has_black(note.lower_key) ? kFourth : kFifth;
    note.lower_finger = hand == Hand::right ? kThumb : far;
    note.upper_finger = hand == Hand::right ? far : kThumb;
  }
}

void finger_thirds(std::span<DoubleNote> rising, Hand hand) {
  HandNotes thirds(rising, hand);
  const auto black_from = [&thirds](std::size_t begin) {
    return black_ends(thirds, kThirdGroups.size(),
                      [begin](std::size_t at) { return group_pair(begin, at); });
  };
  const std::size_t best = std::ranges::min(kGroupPlaces, {}, black_from);
  for (std::size_t at = 0; at < thirds.size(); ++at) thirds.set(at, group_pair(best, at));
  finish_ends(thirds);
}

void finger_sixths(std::span<DoubleNote> rising, Hand hand) {
  HandNotes sixths(rising, hand);
  const auto black_from = [&sixths](std::size_t begin) {
    return black_ends(sixths, sixths.size(),
                      [begin](std::size_t at) { return sixth_pair(begin, at); });
  };
  const std::size_t best = black_from(1) < black_from(0) ? 1 : 0;
  for (std::size_t at = 0; at < sixths.size(); ++at) sixths.set(at, sixth_pair(best, at));
}

void finger_chromatic_thirds(std::span<DoubleNote> rising, Hand hand) {
  HandNotes thirds(rising, hand);
  const int outward = hand == Hand::right ? 1 : -1;
  for (std::size_t at = 0; at < thirds.size(); ++at) {
    const int key = thirds.near_key(at);
    const bool before_white = !has_black(key + outward);
    thirds.set(at, has_black(key) ? kTwoFour : before_white ? kThreeFive : kOneThree);
  }
  finish_ends(thirds);
}

}  // namespace fingerturn
