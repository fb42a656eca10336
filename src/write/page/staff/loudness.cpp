#include "write/page/staff/loudness.hpp"

#include "write/page/staff/bar_signs.hpp"
#include "write/page/staff/staff_chord.hpp"

#include <algorithm>
#include <optional>
#include <string_view>
#include <utility>

namespace fingerturn {
namespace {

constexpr double kLoudnessAir = 0.5;
constexpr double kOpening = 1.3;  // how far a hairpin opens

Glyph glyph_of(char letter) {
  switch (letter) {
    case 'p':
      return Glyph::dynamic_p;
    case 'm':
      return Glyph::dynamic_m;
    case 'r':
      return Glyph::dynamic_r;
    case 's':
      return Glyph::dynamic_s;
    case 'z':
      return Glyph::dynamic_z;
    default:
      return Glyph::dynamic_f;
  }
}

/// Letters whose middle stands at x, on the line 0.
Inks letters_at(std::string_view letters, double x) {
  constexpr double kOverlap = 0.1;  // they lean
  Inks inks;
  double right = 0;
  for (const char letter : letters) {
    inks.push_back(glyph_ink(InkKind::dynamic, glyph_of(letter), {right, 0}));
    right = inks.back().box.right - kOverlap;
  }
  const Box box = box_of(inks);
  move_all(inks, x - (box.left + box.right) / 2, 0);
  return inks;
}

/// A hairpin between two places, or a part of one: how far it is open at both.
Inks hairpin_between(double from, double to, double opening_from, double opening_to) {
  constexpr double kThickness = 0.14;
  constexpr double kMiddle = -0.55;  // of the letters beside it
  Inks inks;
  for (const double side : {-0.5, 0.5}) {
    inks.push_back(line_ink(InkKind::hairpin, {from, kMiddle + side * opening_from},
                            {to, kMiddle + side * opening_to}, kThickness));
  }
  return inks;
}

class Loudness {
 public:
  Loudness(const BarsInSystem& system, Hand hand, bool alone)
      : system_(system), hand_(hand), alone_(alone) {}

  Inks draw(OpenLoudness& open, const Skyline& sky) {
    add_dynamics(open);
    add_hairpins(open);
    std::ranges::stable_sort(signs_, {}, [](const Inks& inks) { return box_of(inks).left; });
    Inks drawn;
    for (std::size_t begin = 0; begin < signs_.size();) {
      const std::size_t end = end_of_row(begin);
      place_row(begin, end, sky);
      for (; begin < end; ++begin) append(drawn, std::move(signs_[begin]));
    }
    return drawn;
  }

 private:
  [[nodiscard]] bool shows(Hand hand) const { return alone_ || hand == hand_; }

  void add_dynamics(OpenLoudness& open) {
    const std::vector<Dynamic>& dynamics = system_.signs->dynamics;
    for (; open.dynamic < dynamics.size(); ++open.dynamic) {
      const Dynamic& dynamic = dynamics[open.dynamic];
      if (is_after(system_, dynamic.at)) break;
      const auto place = shows(dynamic.hand) ? place_of(system_, dynamic.at) : std::nullopt;
      if (place) add_letters(letters_at(dynamic.letters, place->x + kHeadWidth / 2), place->bar);
    }
    letters_ = signs_.size();
  }

  /// Two that stand at one moment stand one after the other; bar lines go by them.
  void add_letters(Inks letters, std::size_t bar) {
    double least = (bar == 0 ? system_.first : system_.places[bar].begin) + kLoudnessAir;
    if (begins_repeat(left_of(*system_.bars[bar].bar))) least += kRepeatRoom;
    if (!signs_.empty()) least = std::max(least, box_of(signs_.back()).right + kLoudnessAir);
    double before_end = system_.places[bar].end - kLoudnessAir - box_of(letters).right;
    if (right_of(*system_.bars[bar].bar) != BarLineStyle::single) before_end -= kRepeatRoom;
    move_all(letters, std::min(0.0, before_end), 0);
    move_all(letters, std::max(0.0, least - box_of(letters).left), 0);
    signs_.push_back(std::move(letters));
  }

  void add_hairpins(OpenLoudness& open) {
    const std::vector<Hairpin>& hairpins = system_.signs->hairpins;
    for (; open.hairpin < hairpins.size(); ++open.hairpin) {
      if (is_after(system_, hairpins[open.hairpin].from)) break;
      if (shows(hairpins[open.hairpin].hand)) open.open.push_back(open.hairpin);
    }
    std::erase_if(open.open, [&](std::size_t i) { return is_before(system_, hairpins[i].to); });
    for (const std::size_t i : open.open) add_hairpin(hairpins[i]);
    std::erase_if(open.open, [&](std::size_t i) { return !is_after(system_, hairpins[i].to); });
  }

  void add_hairpin(const Hairpin& hairpin) {
    constexpr double kShortest = 1.5;
    constexpr double kHalfOpen = 0.5;
    const std::optional<PlaceInSystem> begin = place_of(system_, hairpin.from);
    const std::optional<PlaceInSystem> end = place_of(system_, hairpin.to);
    double from = begin ? begin->x : system_.first;
    double to = (end ? end->x : system_.places.back().end) - kLoudnessAir;
    for (std::size_t i = 0; i < letters_; ++i) keep_clear(box_of(signs_[i]), from, to);
    if (to - from < kShortest) return;
    const double wide = hairpin.louder ? 1 : 0;
    const double at_begin = begin ? 1 - wide : kHalfOpen;
    const double at_end = end || ends_with_system(hairpin) ? wide : kHalfOpen;
    signs_.push_back(hairpin_between(from, to, kOpening * at_begin, kOpening * at_end));
  }

  /// Up to the first beat of the next system it is up to the end of this one.
  [[nodiscard]] bool ends_with_system(const Hairpin& hairpin) const {
    const MeasuredBar& last = system_.bars.back();
    return last.ends && hairpin.to == BarMoment{last.bar->bar + 1};
  }

  /// Moves the ends of a hairpin away from letters that stand there.
  static void keep_clear(const Box& letters, double& from, double& to) {
    if (letters.right + kLoudnessAir < from || letters.left - kLoudnessAir > to) return;
    const double middle = (letters.left + letters.right) / 2;
    if (middle - from < to - middle) {
      from = std::max(from, letters.right + kLoudnessAir);
    } else {
      to = std::min(to, letters.left - kLoudnessAir);
    }
  }

  /// The end of the signs that follow one another so closely that they share a line.
  [[nodiscard]] std::size_t end_of_row(std::size_t begin) const {
    constexpr double kClose = 4;
    double right = box_of(signs_[begin]).right;
    std::size_t end = begin + 1;
    for (; end < signs_.size(); ++end) {
      const Box box = box_of(signs_[end]);
      if (box.left > right + kClose) break;
      right = std::max(right, box.right);
    }
    return end;
  }

  void place_row(std::size_t begin, std::size_t end, const Skyline& sky) {
    const bool below = hand_ == Hand::right;
    double y = below ? 0 : kStaffHeight;
    for (std::size_t i = begin; i < end; ++i) {
      const Box box = box_of(signs_[i]);
      const double left = box.left - kLoudnessAir;
      const double right = box.right + kLoudnessAir;
      y = below ? std::max(y, sky.bottom(left, right, kStaffHeight) + 2 * kLoudnessAir - box.top)
                : std::min(y, sky.top(left, right, 0) - 2 * kLoudnessAir - box.bottom);
    }
    for (std::size_t i = begin; i < end; ++i) move_all(signs_[i], 0, y);
  }

  const BarsInSystem& system_;
  Hand hand_;
  bool alone_;
  std::vector<Inks> signs_;
  std::size_t letters_ = 0;  ///< how many of the signs are letters
};

}  // namespace

Inks draw_loudness(const BarsInSystem& system, Hand hand, bool alone, OpenLoudness& open,
                   const Skyline& sky) {
  if (system.signs == nullptr || system.places.empty()) return {};
  return Loudness(system, hand, alone).draw(open, sky);
}

}  // namespace fingerturn
