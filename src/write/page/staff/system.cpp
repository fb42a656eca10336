#include "write/page/staff/system.hpp"

#include "write/page/staff/bar_signs.hpp"
#include "write/page/staff/system_drawing.hpp"

#include <algorithm>
#include <iterator>
#include <memory>
#include <utility>

namespace fingerturn {
namespace {

constexpr double kLeastHead = 7.4;  // the names of the ribbon's lines stand above it
constexpr double kLetterRoom = 2;   // for the letters of several ribbons
constexpr double kLeastStretch = 0.55;
constexpr double kFullStretch = 1;
constexpr double kLooseStretch = 1.7;  // of a last system that is not full
constexpr double kMostStretch = 64;
constexpr double kNearlyFull = 0.75;

MeasuredBar without_moments(const MeasuredBar& bar) {
  return {bar.bar, {}, bar.readings, bar.goes_on, bar.ends};
}

/// Whether a bar may go on in the next system before one of its moments.
bool may_part(const MeasuredBar& bar, std::size_t moment) {
  if (moment > 0 && bar.moments[moment - 1].grace) return false;
  for (const HandMoment& hand : bar.moments[moment].hands) {
    for (const StaffChord& chord : hand.chords) {
      for (const BeamPart part : {chord.chord->beam, chord.chord->tuplet}) {
        if (part == BeamPart::inside || part == BeamPart::ends) return false;
      }
    }
  }
  return true;
}

RibbonsOfHands one_ribbon_each(const SharedLines& lines) {
  RibbonsOfHands hands;
  for (const AnalysedLine& line : lines) hands.push_back({line});
  return hands;
}

SharedLines lines_on_staves(const RibbonsOfHands& hands) {
  SharedLines lines;
  for (const std::vector<AnalysedLine>& ribbons : hands) lines.push_back(ribbons.front());
  return lines;
}

}  // namespace

/// Bars that are placed in their system.
struct SystemMaker::Row {
  std::vector<MeasuredBar> bars;
  std::vector<SpacedBar> places;
  std::vector<BarEnds> ends;
  double first = 0;  ///< where the staves' heads end
  bool is_last = false;
};

SystemMaker::SystemMaker(const AnalysedPassage& passage, const SharedLines& lines,
                         const WatchNumbersOfLines& watch, double width, const MusicStyle& style)
    : SystemMaker(passage, one_ribbon_each(lines), watch, width, style) {}

SystemMaker::SystemMaker(const AnalysedPassage& passage, RibbonsOfHands hands,
                         const WatchNumbersOfLines& watch, double width, const MusicStyle& style)
    : hands_(std::move(hands)),
      watch_(watch),
      signs_(passage.written().signs),
      again_(passage.found().again),
      width_(width),
      style_(style),
      bars_(passage, lines_on_staves(hands_)),
      readings_(readings_of(BarSequence(passage, lines_on_staves(hands_)))),
      open_(hands_.size()) {}

bool SystemMaker::has_bar(std::size_t number) {
  while (waiting_.size() <= number) {
    if (!add_next()) return false;
  }
  return true;
}

bool SystemMaker::add_next() {
  std::optional<NotatedBar> bar = bars_.next();
  if (!bar) {
    if (named_ == again_.size()) return false;
    add_repeats_before(again_.back().bars.last + 1);
    return true;
  }
  add_repeats_before(bar->bar);
  last_readings_.clear();
  for (const Readings& of_line : readings_) last_readings_.push_back(of_line[read_]);
  ++read_;
  add_parts(measured(std::move(*bar), hands_, last_readings_, bars_.ticks_in_whole()));
  return true;
}

/// Bars that are named stand as an empty one, read as those before.
void SystemMaker::add_repeats_before(std::int32_t bar) {
  for (; named_ < again_.size() && again_[named_].bars.first < bar; ++named_) {
    NotatedBar empty{.bar = again_[named_].bars.first};
    empty.hands.resize(hands_.size());
    waiting_.push_back({std::make_shared<const NotatedBar>(std::move(empty)), {}, last_readings_});
    waiting_.back().again = again_[named_];
  }
}

/// A bar of more moments than a system holds waits in parts.
void SystemMaker::add_parts(MeasuredBar bar) {
  constexpr std::size_t kMostMoments = 96;
  MeasuredBar part = without_moments(bar);
  for (std::size_t i = 0; i < bar.moments.size(); ++i) {
    const bool is_full = part.moments.size() >= kMostMoments &&
                         (may_part(bar, i) || part.moments.size() >= 2 * kMostMoments);
    if (is_full) {
      part.ends = false;
      waiting_.push_back(std::exchange(part, without_moments(bar)));
      part.goes_on = true;
    }
    part.moments.push_back(std::move(bar.moments[i]));
  }
  waiting_.push_back(std::move(part));
}

double SystemMaker::begin_of_first() {
  const double begin = begin_of_staves(hands_.size());
  double end = hands_.front().size() > 1 ? kLeastHead + kLetterRoom : kLeastHead;
  for (std::size_t hand = 0; hand < hands_.size(); ++hand) {
    end = std::max(end, head_of(waiting_.front(), hand, key_, begin).end);
  }
  return end;
}

std::vector<BarEnds> SystemMaker::ends_of(std::size_t count) {
  constexpr double kClefRoom = 2.6;
  std::vector<BarEnds> ends(count);
  KeySignature key = key_;
  for (std::size_t i = 0; i < count; ++i) {
    const MeasuredBar& bar = waiting_[i];
    if (!bar.goes_on && begins_repeat(left_of(*bar.bar))) ends[i].before += kRepeatRoom;
    for (std::size_t hand = 0; i > 0 && hand < hands_.size(); ++hand) {
      const double signs = changes_in(bar, hand, key, 0).end;
      ends[i].before = std::max(ends[i].before, signs);
    }
    if (bar.ends && right_of(*bar.bar) != BarLineStyle::single) ends[i].after += kRepeatRoom;
    if (bar.again) ends[i].before += room_of(*bar.again);
    if (i + 1 < count && changes_clef(bar, waiting_[i + 1])) ends[i].after += kClefRoom;
    if (bar.bar->key) key = *bar.bar->key;
  }
  return ends;
}

std::size_t SystemMaker::bars_that_fit() {
  const double begin = begin_of_first();
  std::size_t count = 1;
  while (has_bar(count)) {
    const std::vector<MeasuredBar> bars(waiting_.begin(),
                                        waiting_.begin() + static_cast<std::ptrdiff_t>(count) + 1);
    if (spaced(bars, ends_of(count + 1), begin, kFullStretch).back().end > width_) break;
    ++count;
  }
  return count;
}

double SystemMaker::end_of_first(std::size_t moments) {
  const MeasuredBar& first = waiting_.front();
  const std::span<const Moment> shown(first.moments.data(), moments);
  return end_of(shown, ends_of(1).front(), begin_of_first(), kLeastStretch);
}

void SystemMaker::split_first() {
  MeasuredBar& first = waiting_.front();
  if (first.moments.size() < 2 || end_of_first(first.moments.size()) <= width_) return;
  std::size_t fit = 1;
  for (std::size_t most = first.moments.size(); fit + 1 < most;) {
    const std::size_t middle = (fit + most) / 2;
    (end_of_first(middle) <= width_ ? fit : most) = middle;
  }
  std::size_t cut = fit;
  while (cut > 1 && !may_part(first, cut)) --cut;
  if (!may_part(first, cut)) cut = fit;
  MeasuredBar rest = first;
  const auto at = static_cast<std::ptrdiff_t>(cut);
  rest.moments.erase(rest.moments.begin(), rest.moments.begin() + at);
  rest.goes_on = true;
  first.moments.erase(first.moments.begin() + at, first.moments.end());
  first.ends = false;
  waiting_.insert(waiting_.begin() + 1, std::move(rest));
}

SystemMaker::Row SystemMaker::justified(std::size_t count) {
  Row row;
  row.first = begin_of_first();
  row.ends = ends_of(count);
  row.is_last = !has_bar(count);
  const auto end = waiting_.begin() + static_cast<std::ptrdiff_t>(count);
  row.bars.assign(std::make_move_iterator(waiting_.begin()), std::make_move_iterator(end));
  waiting_.erase(waiting_.begin(), end);
  double least = kLeastStretch / 4;
  double most = kMostStretch;
  if (row.is_last) {
    const double loose = spaced(row.bars, row.ends, row.first, kLooseStretch).back().end;
    if (loose < kNearlyFull * width_) most = kLooseStretch;
  }
  constexpr int kHalvings = 30;
  for (int step = 0; step < kHalvings; ++step) {
    const double stretch = (least + most) / 2;
    row.places = spaced(row.bars, row.ends, row.first, stretch);
    (row.places.back().end > width_ ? most : least) = stretch;
  }
  row.places = spaced(row.bars, row.ends, row.first, least);
  return row;
}

std::optional<System> SystemMaker::next() {
  if (!has_bar(0)) return std::nullopt;
  split_first();
  Row row = justified(waiting_.front().ends ? bars_that_fit() : 1);
  const BarsInSystem bars{row.bars, row.places, row.first, &signs_, bars_.ticks_in_whole()};
  System system = draw_system(hands_, bars, {key_, &open_, row.is_last, style_}, watch_);
  system.width = width_;
  for (const MeasuredBar& bar : row.bars) {
    if (bar.bar->key) key_ = *bar.bar->key;
  }
  return system;
}

}  // namespace fingerturn
