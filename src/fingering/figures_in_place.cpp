#include "fingering/figures_in_place.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <iterator>
#include <map>
#include <utility>

namespace fingerturn {
namespace {

constexpr std::int32_t kSemitonesInOctave = 12;
constexpr double kSixteenth = 0.25;  // in quarter notes
constexpr double kThirtySecond = 0.125;

bool is_single_note(const Grip& grip) { return grip.count == 1 && grip.struck_count == 1; }

/// How far a grip lies beyond the one before it, toward the fifth finger; 0 where they are no
/// single notes one after the other.
std::int32_t step_to(const std::vector<Grip>& grips, std::size_t at) {
  if (at == 0 || at >= grips.size() || grips[at].opens) return 0;
  if (!is_single_note(grips[at]) || !is_single_note(grips[at - 1])) return 0;
  return grips[at].keys[0].across - grips[at - 1].keys[0].across;
}

/// Past the last note of the octaves that begin at a grip, all with the same note first.
std::size_t end_of_octaves(const std::vector<Grip>& grips, std::size_t begin) {
  const std::int32_t first = step_to(grips, begin + 1);
  if (std::abs(first) != kSemitonesInOctave) return begin;
  std::size_t end = begin + 2;
  while (step_to(grips, end) != 0 && step_to(grips, end + 1) == first) end += 2;
  return end;
}

Finger finger_in_octave(const GripKey& key, bool far) {
  constexpr Finger kOnBlack = 4;
  if (!far) return kThumb;
  return key.black ? kOnBlack : kFifth;
}

/// Where another finger is given the whole figure is meant otherwise.
bool speaks_against(const std::vector<Grip>& grips, const Figure& figure) {
  for (std::size_t at = figure.begin; at < figure.end; ++at) {
    const Finger given = grips[at].keys[0].given;
    if (given != 0 && given != figure.fingers[at - figure.begin]) return true;
  }
  return false;
}

/// Past the last of the strokes that go to and fro between two keys from a grip on.
std::size_t end_of_alternation(const std::vector<Grip>& grips, std::size_t begin) {
  const std::int32_t first = step_to(grips, begin + 1);
  if (first == 0 || std::abs(first) >= kSemitonesInOctave) return begin;
  std::size_t end = begin + 2;
  while (step_to(grips, end) == ((end - begin) % 2 == 0 ? -first : first)) ++end;
  return end;
}

/// Past the last quick stroke of the key that is struck at a grip.
std::size_t end_of_repetition(const std::vector<Grip>& grips, std::size_t begin) {
  const auto is_again = [&](std::size_t at) {
    return at < grips.size() && !grips[at].opens && is_single_note(grips[at]) &&
           grips[at].keys[0].across == grips[begin].keys[0].across &&
           grips[at].quarters_since <= kSixteenth;
  };
  if (!is_single_note(grips[begin])) return begin;
  std::size_t end = begin + 1;
  while (is_again(end)) ++end;
  return end;
}

constexpr std::int32_t kWholeTone = 2;

struct FingersOfTwo {
  Finger near = 0;
  Finger far = 0;
};

/// The fingers of a trill or tremolo: no thumb on a black key as long as the others reach.
FingersOfTwo fingers_to_and_fro(const GripKey& near, std::int32_t width) {
  constexpr std::int32_t kWidestThird = 4;
  constexpr std::int32_t kPerfectFourth = 5;
  if (width > kPerfectFourth) return {kThumb, kFifth};
  if (width > kWidestThird) return {kThumb, 4};
  if (!near.black) return {kThumb, 3};
  return width > kWholeTone ? FingersOfTwo{2, 4} : FingersOfTwo{2, 3};
}

/// The keys of a stretch of single notes, and how often each is struck. Keys come in at its end and
/// go out at its beginning, so that the search takes time in proportion to the line.
class Place {
 public:
  void add(const GripKey& key) {
    Key& found = keys_[key.across];
    found.black = key.black;
    ++found.strokes;
  }
  void remove(const GripKey& key) {
    const auto found = keys_.find(key.across);
    if (--found->second.strokes == 0) keys_.erase(found);
  }
  void clear() { keys_.clear(); }

  [[nodiscard]] bool fits() const {
    constexpr std::int32_t kSemitonesInFifth = 7;
    return keys_.size() <= kFifth && width() <= kSemitonesInFifth;
  }
  /// Whether five lie like neighbours of a scale and not of the chromatic one, that of the thumb on
  /// a white key.
  [[nodiscard]] bool has_five_fingers() const {
    constexpr std::int32_t kDiminishedFifth = 6;
    const auto is_wide = [](const auto& one, const auto& next) {
      return next.first - one.first > kWholeTone;
    };
    return keys_.size() == kFifth && !keys_.begin()->second.black && width() >= kDiminishedFifth &&
           std::ranges::adjacent_find(keys_, is_wide) == keys_.end();
  }
  [[nodiscard]] Finger finger(const GripKey& key) const {
    return static_cast<Finger>(std::distance(keys_.begin(), keys_.find(key.across)) + kThumb);
  }

 private:
  [[nodiscard]] std::int32_t width() const {
    return keys_.empty() ? 0 : keys_.rbegin()->first - keys_.begin()->first;
  }

  struct Key {
    bool black = false;
    std::size_t strokes = 0;
  };
  std::map<std::int32_t, Key> keys_;
};

class PlaceSearch {
 public:
  explicit PlaceSearch(const std::vector<Grip>& grips) : grips_(grips) {}

  std::vector<Figure> found(const std::vector<bool>& taken) {
    for (std::size_t at = 0; at < grips_.size(); ++at) {
      const bool follows = at > begin_ && step_to(grips_, at) != 0 && !taken[at] && !taken[at - 1];
      if (!follows) restart(at);
      place_.add(key(at));
      if (place_.fits()) continue;
      place_.remove(key(at));
      keep(at);
      place_.add(key(at));
      while (!place_.fits()) place_.remove(key(begin_++));
    }
    keep(grips_.size());
    return std::move(figures_);
  }

 private:
  [[nodiscard]] const GripKey& key(std::size_t at) const { return grips_[at].keys[0]; }

  void restart(std::size_t at) {
    keep(at);
    place_.clear();
    begin_ = at;
  }

  /// Keeps the stretch that ends before a grip, if it is a figure; the next begins there.
  void keep(std::size_t end) {
    constexpr std::size_t kFewestNotes = 12;
    if (end < begin_ + kFewestNotes || !place_.has_five_fingers()) return;
    Figure figure;
    figure.begin = begin_;
    figure.end = end;
    figure.kind = FigureKind::five_fingers;
    for (std::size_t at = begin_; at < end; ++at) {
      figure.fingers.push_back(place_.finger(key(at)));
    }
    figures_.push_back(std::move(figure));
    place_.clear();
    begin_ = end;
  }

  const std::vector<Grip>& grips_;
  Place place_;
  std::size_t begin_ = 0;
  std::vector<Figure> figures_;
};

}  // namespace

std::vector<Figure> broken_octaves(const std::vector<Grip>& grips) {
  constexpr std::size_t kFewestNotes = 4;
  std::vector<Figure> figures;
  for (std::size_t begin = 0; begin < grips.size(); ++begin) {
    const std::size_t end = end_of_octaves(grips, begin);
    if (end < begin + kFewestNotes) continue;
    Figure figure;
    figure.begin = begin;
    figure.end = end;
    figure.kind = FigureKind::broken_octaves;
    const bool far_first = step_to(grips, begin + 1) < 0;
    for (std::size_t at = begin; at < end; ++at) {
      const bool far = ((at - begin) % 2 == 0) == far_first;
      figure.fingers.push_back(finger_in_octave(grips[at].keys[0], far));
    }
    figures.push_back(std::move(figure));
    begin = end - 1;
  }
  return figures;
}

std::vector<Figure> trills_and_tremolos(const std::vector<Grip>& grips) {
  constexpr std::size_t kFewestStrokes = 8;
  std::vector<Figure> figures;
  for (std::size_t begin = 0; begin < grips.size(); ++begin) {
    const std::size_t end = end_of_alternation(grips, begin);
    if (end < begin + kFewestStrokes) continue;
    const std::int32_t first = step_to(grips, begin + 1);
    const std::int32_t width = std::abs(first);
    const std::size_t near = first > 0 ? begin : begin + 1;
    const FingersOfTwo fingers = fingers_to_and_fro(grips[near].keys[0], width);
    Figure figure;
    figure.begin = begin;
    figure.end = end;
    figure.kind = width > kWholeTone ? FigureKind::tremolo : FigureKind::trill;
    figure.is_whole = grips[begin + 1].quarters_since <= kThirtySecond;
    for (std::size_t at = begin; at < end; ++at) {
      figure.fingers.push_back((at - near) % 2 == 0 ? fingers.near : fingers.far);
    }
    if (!speaks_against(grips, figure)) figures.push_back(std::move(figure));
    begin = end - 1;
  }
  return figures;
}

std::vector<Figure> repeated_notes(const std::vector<Grip>& grips) {
  constexpr std::size_t kThree = 3;
  constexpr std::size_t kFour = 4;
  std::vector<Figure> figures;
  for (std::size_t begin = 0; begin < grips.size(); ++begin) {
    const std::size_t end = end_of_repetition(grips, begin);
    if (end < begin + kFour) continue;
    const std::size_t strokes = end - begin;
    const std::size_t group = strokes % kThree == 0 && strokes % kFour != 0 ? kThree : kFour;
    Figure figure;
    figure.begin = begin;
    figure.end = end;
    figure.kind = FigureKind::repeated_notes;
    figure.is_whole = true;
    for (std::size_t stroke = 0; stroke < strokes; ++stroke) {
      figure.fingers.push_back(static_cast<Finger>(group - stroke % group));
    }
    if (!speaks_against(grips, figure)) figures.push_back(std::move(figure));
    begin = end - 1;
  }
  return figures;
}

std::vector<Figure> five_finger_figures(const std::vector<Grip>& grips,
                                        const std::vector<Figure>& others) {
  std::vector<bool> taken(grips.size(), false);
  for (const Figure& other : others) {
    for (std::size_t at = other.begin; at < other.end; ++at) taken[at] = true;
  }
  return PlaceSearch(grips).found(taken);
}

}  // namespace fingerturn
