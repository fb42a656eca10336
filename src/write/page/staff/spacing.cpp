#include "write/page/staff/spacing.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace fingerturn {
namespace {

constexpr double kFirstGap = 0.9;  // after a bar line
constexpr double kLastGap = 0.9;   // before one
constexpr double kInkGap = 0.35;   // between inks
constexpr double kHeadMiddle = kHeadWidth / 2;
constexpr double kEmptyBar = 6;

/// How far apart moments like to be; a note of twice the value gets less than twice the room.
double natural_of(const Moment& moment) {
  constexpr double kSixteenth = 1.7;
  constexpr double kGrace = 1.2;
  constexpr double kSixteenths = 16;
  constexpr double kGrowth = 0.55;
  if (moment.grace) return kGrace;
  return kSixteenth * std::pow(moment.length * kSixteenths, kGrowth);
}

/// How far the staff and the ribbon of a hand are filled.
struct Filled {
  double staff = -1e9;
  double ribbon = -1e9;
};

class Spacing {
 public:
  explicit Spacing(double stretch) : stretch_(stretch) {}

  SpacedBar place(std::span<const Moment> moments, const BarEnds& ends, double begin) {
    SpacedBar spaced;
    spaced.begin = begin;
    const double first = begin + ends.before + kFirstGap;
    for (Filled& hand : filled_) hand.staff = first - kInkGap;
    double wanted = first;
    for (const Moment& moment : moments) {
      const double x = place(moment, wanted);
      spaced.moments.push_back(x);
      wanted = x + natural_of(moment) * stretch_;
    }
    if (moments.empty()) wanted = first + kEmptyBar * stretch_;
    double end = wanted;
    for (const Filled& hand : filled_) {
      end = std::max({end, hand.staff + kLastGap, hand.ribbon});
    }
    spaced.end = end + ends.after;
    return spaced;
  }

 private:
  double place(const Moment& moment, double x) {
    for (std::size_t hand = 0; hand < kMostHands; ++hand) {
      x = std::max(x, earliest(moment.hands[hand], hand));
    }
    for (std::size_t hand = 0; hand < kMostHands; ++hand) fill(moment.hands[hand], hand, x);
    return x;
  }

  /// The first place where a hand's part of a moment does not meet what stands before it.
  [[nodiscard]] double earliest(const HandMoment& moment, std::size_t hand) const {
    double x = -1e9;
    if (moment.reach) x = filled_[hand].staff + kInkGap - moment.reach->left;
    if (!moment.nodes.empty()) {
      x = std::max(x, filled_[hand].ribbon + moment.nodes.front().room.left - kHeadMiddle);
    }
    return x;
  }

  void fill(const HandMoment& moment, std::size_t hand, double x) {
    if (moment.reach) filled_[hand].staff = x + moment.reach->right;
    if (moment.nodes.empty()) return;
    filled_[hand].ribbon = node_places(moment, x).back() + moment.nodes.back().room.right;
  }

  double stretch_;
  std::array<Filled, kMostHands> filled_{};
};

}  // namespace

std::vector<double> node_places(const HandMoment& moment, double x) {
  std::vector<double> places;
  double at = x + kHeadMiddle;
  for (std::size_t i = 0; i < moment.nodes.size(); ++i) {
    if (i > 0) at += moment.nodes[i - 1].room.right + moment.nodes[i].room.left;
    places.push_back(at);
  }
  return places;
}

double end_of(std::span<const Moment> moments, const BarEnds& ends, double begin, double stretch) {
  return Spacing(stretch).place(moments, ends, begin).end;
}

std::vector<SpacedBar> spaced(std::span<const MeasuredBar> bars, std::span<const BarEnds> ends,
                              double begin, double stretch) {
  std::vector<SpacedBar> placed;
  Spacing spacing(stretch);
  for (std::size_t i = 0; i < bars.size(); ++i) {
    placed.push_back(
        spacing.place(bars[i].moments, ends[i], placed.empty() ? begin : placed.back().end));
  }
  return placed;
}

}  // namespace fingerturn
