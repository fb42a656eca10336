#include "fingering/other_ways.hpp"

#include "fingering/way_view.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace fingerturn {
namespace {

/// Where two ways differ, in grips.
struct Difference {
  std::vector<std::size_t> fingers;       ///< with another finger
  std::vector<std::size_t> passings;      ///< to which the thumb passes in the second only
  std::vector<std::size_t> passings_not;  ///< and in the first only

  [[nodiscard]] bool matters(bool in_short_line) const noexcept {
    if (fingers.size() > 1) return true;
    if (fingers.empty()) return false;
    return in_short_line || !passings.empty() || !passings_not.empty();
  }
};

void add_difference(const WayView& one, const WayView& other, std::size_t grip,
                    Difference& difference) {
  if (differing_key(one, other, grip) < one.at(grip).grip.count) {
    difference.fingers.push_back(grip);
  }
  if (one.passes(grip) == other.passes(grip)) return;
  (other.passes(grip) ? difference.passings : difference.passings_not).push_back(grip);
}

/// "thumb on G4 and C5 instead of F4": where the thumb passes.
class ApartWords {
 public:
  ApartWords(const Line& line, const WayView& first, const WayView& other)
      : line_(line), first_(first), other_(other) {}

  [[nodiscard]] std::string of(const Difference& difference) const {
    std::string words = passing_words(difference);
    if (words.empty()) words = finger_words(difference);
    return words + ", " + bars(difference.fingers.front(), difference.fingers.back());
  }

 private:
  [[nodiscard]] const Event& event(std::size_t grip) const {
    return line_.events[first_.at(grip).grip.event];
  }

  [[nodiscard]] std::string thumb_notes(const WayView& way,
                                        const std::vector<std::size_t>& passings) const {
    constexpr std::size_t kMostNamed = 3;
    std::vector<std::string> names;
    for (const std::size_t grip : passings) {
      if (names.size() == kMostNamed) break;
      names.push_back(to_string(event(way.thumb_at(grip)).notes.front().pitch));
    }
    const std::size_t more = passings.size() - names.size();
    return fmt::format("{}{}", fmt::join(names, ", "),
                       more == 0 ? "" : fmt::format(" and {} more", more));
  }

  [[nodiscard]] std::string passing_words(const Difference& difference) const {
    const std::string with = thumb_notes(other_, difference.passings);
    const std::string without = thumb_notes(first_, difference.passings_not);
    if (with.empty() && without.empty()) return "";
    if (without.empty()) return "thumb passes on " + with + " too";
    if (with.empty()) return "thumb does not pass on " + without;
    if (with == without) return "";  // another finger beside the same thumb
    return "thumb on " + with + " instead of " + without;
  }

  /// "4 instead of 5 on C5, 2 more fingers differ"
  [[nodiscard]] std::string finger_words(const Difference& difference) const {
    const std::size_t grip = difference.fingers.front();
    const std::size_t key = differing_key(first_, other_, grip);
    const Grip& here = first_.at(grip).grip;
    const std::size_t more = difference.fingers.size() - 1;
    const std::string others =
        more == 1 ? ", 1 more finger differs" : fmt::format(", {} more fingers differ", more);
    return fmt::format("{} instead of {} on {}{}", other_.at(grip).choice.strikes.at(key),
                       first_.at(grip).choice.strikes.at(key),
                       pitch_at(event(grip), here.keys.at(key).across), more == 0 ? "" : others);
  }

  [[nodiscard]] std::string pitch_at(const Event& event, std::int32_t where) const {
    const auto note = std::ranges::find_if(event.notes, [&](const Note& each) {
      return across(line_.hand, midi_number(each.pitch)) == where;
    });
    return to_string(note == event.notes.end() ? event.notes.front().pitch : note->pitch);
  }

  [[nodiscard]] std::string bars(std::size_t from, std::size_t to) const {
    return to_string(BarRange{event(from).bar, event(to).bar});
  }

  const Line& line_;
  const WayView& first_;
  const WayView& other_;
};

/// Chooses among the detours of the easiest path.
class Picker {
 public:
  Picker(const Line& line, const LineCosts& costs, const Path& first)
      : line_(line),
        costs_(costs),
        first_(first),
        remaining_(costs),
        base_(easiest_path(costs, remaining_)),
        is_short_(costs.grip_count() <= 2) {
    const WayView base(costs_, base_, kNothing);
    const WayView of_first(costs_, first_, kNothing);
    for (std::size_t grip = 0; grip < costs.grip_count(); ++grip) {
      add_difference(of_first, base, grip, base_difference_);
    }
  }

  std::vector<OtherWay> picked(std::span<const std::size_t> first_places, std::size_t most) {
    if (costs_.grip_count() == 0 || most == 0) return {};
    try_stretch(kNothing);
    const Detours detours(costs_, remaining_, base_);
    std::set<std::pair<std::size_t, std::uint8_t>> changed;
    for (const Detour& detour : detours.easiest(kLookedAtForEach * most)) {
      if (kept_.size() >= most) break;
      const std::size_t place = first_places.empty() ? detour.at : first_places[detour.at];
      if (changed.contains({place, detour.choice})) continue;
      if (try_stretch(detours.stretch(detour))) changed.insert({place, detour.choice});
    }
    return ways();
  }

 private:
  static constexpr std::size_t kLookedAtForEach = 64;
  static inline const Stretch kNothing{};

  bool try_stretch(const Stretch& stretch) {
    if (!from_first(stretch).matters(is_short_)) return false;
    const auto is_near = [&](const Stretch& kept) {
      return !between(kept, stretch).matters(is_short_);
    };
    if (std::ranges::any_of(kept_, is_near)) return false;
    kept_.push_back(stretch);
    return true;
  }

  [[nodiscard]] Difference between(const Stretch& one, const Stretch& other) const {
    const WayView left(costs_, base_, one);
    const WayView right(costs_, base_, other);
    Difference difference;
    if (one.choices.empty()) {
      add_range(left, right, other.begin, other.end(), difference);
    } else if (other.choices.empty()) {
      add_range(left, right, one.begin, one.end(), difference);
    } else {
      add_both(left, right, difference);
    }
    return difference;
  }

  /// Two stretches may lie far apart: nothing differs between them.
  void add_both(const WayView& left, const WayView& right, Difference& difference) const {
    const bool in_order = left.own().begin <= right.own().begin;
    const Stretch& near = in_order ? left.own() : right.own();
    const Stretch& far = in_order ? right.own() : left.own();
    if (near.end() < far.begin) {
      add_range(left, right, near.begin, near.end(), difference);
      add_range(left, right, far.begin, far.end(), difference);
    } else {
      add_range(left, right, near.begin, std::max(near.end(), far.end()), difference);
    }
  }

  /// The grips of a stretch, and the one after it, to which the thumb may pass.
  void add_range(const WayView& left, const WayView& right, std::size_t begin, std::size_t end,
                 Difference& difference) const {
    for (std::size_t grip = begin; grip < std::min(end + 1, costs_.grip_count()); ++grip) {
      add_difference(left, right, grip, difference);
    }
  }

  /// Against the first way, which may differ from the base in many places.
  [[nodiscard]] Difference from_first(const Stretch& stretch) const {
    const WayView first(costs_, first_, kNothing);
    const WayView other(costs_, base_, stretch);
    const std::size_t end = stretch.choices.empty() ? stretch.begin : stretch.end() + 1;
    Difference difference;
    const auto add_outside = [&](const std::vector<std::size_t>& all,
                                 std::vector<std::size_t>& added, bool before) {
      for (const std::size_t grip : all) {
        if (before ? grip < stretch.begin : grip >= end) added.push_back(grip);
      }
    };
    const auto add_base = [&](bool before) {
      add_outside(base_difference_.fingers, difference.fingers, before);
      add_outside(base_difference_.passings, difference.passings, before);
      add_outside(base_difference_.passings_not, difference.passings_not, before);
    };
    add_base(true);
    if (!stretch.choices.empty()) {
      add_range(first, other, stretch.begin, stretch.end(), difference);
    }
    add_base(false);
    return difference;
  }

  [[nodiscard]] std::vector<OtherWay> ways() const {
    std::vector<OtherWay> found;
    for (const Stretch& stretch : kept_) {
      Path path = base_;
      std::ranges::copy(stretch.choices,
                        path.choices.begin() + static_cast<std::ptrdiff_t>(stretch.begin));
      const WayView first(costs_, first_, kNothing);
      const WayView other(costs_, base_, stretch);
      found.push_back({std::move(path), ApartWords(line_, first, other).of(from_first(stretch))});
    }
    return found;
  }

  const Line& line_;
  const LineCosts& costs_;
  const Path& first_;
  Remaining remaining_;
  Path base_;
  Difference base_difference_;
  bool is_short_;
  std::vector<Stretch> kept_;
};

}  // namespace

std::vector<OtherWay> other_ways(const Line& line, const LineCosts& costs, const Path& first,
                                 std::span<const std::size_t> first_places, std::size_t most) {
  return Picker(line, costs, first).picked(first_places, most);
}

}  // namespace fingerturn
