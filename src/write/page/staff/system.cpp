#include "write/page/staff/system.hpp"

#include <algorithm>
#include <utility>

namespace fingerturn {
namespace {

constexpr double kBraceRoom = 1.5;
constexpr double kClefGap = 0.55;
constexpr double kSignGap = 0.65;
constexpr double kSmallClef = 0.75;
constexpr double kRepeatRoom = 1.2;
constexpr double kLeastHead = 7.4;  // the names of the ribbon's lines stand above it
constexpr double kLeastStretch = 0.55;
constexpr double kFullStretch = 1;
constexpr double kLooseStretch = 1.7;  // of a last system that is not full

bool begins_repeat(BarLineStyle style) {
  return style == BarLineStyle::repeat_start || style == BarLineStyle::repeat_both;
}
bool ends_repeat(BarLineStyle style) {
  return style == BarLineStyle::repeat_end || style == BarLineStyle::repeat_both;
}

/// The style of a line between bars, where hands may differ.
BarLineStyle left_of(const NotatedBar& bar) {
  BarLineStyle style = BarLineStyle::single;
  for (const NotatedHand& hand : bar.hands) style = std::max(style, hand.left);
  return style;
}
BarLineStyle right_of(const NotatedBar& bar) {
  BarLineStyle style = BarLineStyle::single;
  for (const NotatedHand& hand : bar.hands) style = std::max(style, hand.right);
  return style;
}

bool changes_clef(const MeasuredBar& bar, const MeasuredBar& next) {
  for (std::size_t hand = 0; hand < bar.readings.size(); ++hand) {
    if (clef_of(bar.readings[hand]) != clef_of(next.readings[hand])) return true;
  }
  return false;
}

/// The signs of a key and meter that a bar brings, from x on, and where they end.
struct Signs {
  Inks inks;
  double end = 0;
};

Signs changes_in(const MeasuredBar& bar, std::size_t hand, KeySignature before, double x) {
  Signs signs{{}, x};
  if (bar.goes_on) return signs;
  if (bar.bar->key) {
    signs.inks = draw_key(*bar.bar->key, before, bar.readings[hand], x);
    if (!signs.inks.empty()) signs.end = x = box_of(signs.inks).right + kSignGap;
  }
  if (bar.bar->meter) {
    append(signs.inks, draw_meter(*bar.bar->meter, x));
    signs.end = box_of(signs.inks).right + kSignGap;
  }
  return signs;
}

/// Clef, key and meter at the head of a system.
Signs head_of(const MeasuredBar& bar, std::size_t hand, KeySignature key, double x) {
  Signs signs{draw_clef(bar.readings[hand], x + kClefGap, 1), 0};
  signs.end = box_of(signs.inks).right + kSignGap;
  const KeySignature now = !bar.goes_on && bar.bar->key ? *bar.bar->key : key;
  Inks keys = draw_key(now, {}, bar.readings[hand], signs.end);
  if (!keys.empty()) signs.end = box_of(keys).right + kSignGap;
  append(signs.inks, std::move(keys));
  if (!bar.goes_on && bar.bar->meter) {
    append(signs.inks, draw_meter(*bar.bar->meter, signs.end));
    signs.end = box_of(signs.inks).right + kSignGap;
  }
  return signs;
}

/// Whether a bar may go on in the next system before one of its moments.
bool may_part(const MeasuredBar& bar, std::size_t moment) {
  if (bar.moments[moment - 1].grace) return false;
  for (const HandMoment& hand : bar.moments[moment].hands) {
    for (const StaffChord& chord : hand.chords) {
      for (const BeamPart part : {chord.chord->beam, chord.chord->tuplet}) {
        if (part == BeamPart::inside || part == BeamPart::ends) return false;
      }
    }
  }
  return true;
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

namespace {

/// Draws a row of bars as a system.
class SystemDrawing {
 public:
  SystemDrawing(const SharedLines& lines, const BarsInSystem& system, double begin)
      : lines_(lines), system_(system), begin_(begin), end_(system.places.back().end) {}

  System draw(KeySignature key, bool is_last, std::vector<OpenTies>& ties,
              const WatchNumbersOfLines& watch) {
    for (std::size_t hand = 0; hand < lines_.size(); ++hand) {
      staves_.push_back(staff_of(hand, key, ties[hand]));
    }
    number_bars();
    set_staves_apart();
    for (std::size_t hand = 0; hand < lines_.size(); ++hand) add_ribbon(hand, watch[hand]);
    for (std::size_t hand = 0; hand < lines_.size(); ++hand) {
      move_all(staves_[hand], 0, tops_[hand]);
      append(inks_, std::move(staves_[hand]));
    }
    draw_bar_lines(is_last);
    if (lines_.size() > 1) draw_brace();
    return finished();
  }

 private:
  Inks staff_of(std::size_t hand, KeySignature key, OpenTies& ties) {
    constexpr double kThickness = 0.11;
    Inks inks;
    for (int line = 0; line <= 4; ++line) {
      const auto y = static_cast<double>(line);
      inks.push_back(line_ink(InkKind::staff_line, {begin_, y}, {end_, y}, kThickness));
    }
    append(inks, head_of(system_.bars.front(), hand, key, begin_).inks);
    append(inks, changes_of(hand, key));
    append(inks, draw_staff(system_, hand, ties));
    return inks;
  }

  Inks changes_of(std::size_t hand, KeySignature key) const {
    Inks inks;
    for (std::size_t i = 0; i < system_.bars.size(); ++i) {
      const MeasuredBar& bar = system_.bars[i];
      if (i > 0) {
        const double x = system_.places[i].begin + kSignGap + repeat_room(i);
        append(inks, changes_in(bar, hand, key, x).inks);
        if (clef_of(bar.readings[hand]) != clef_of(system_.bars[i - 1].readings[hand])) {
          append(inks, clef_before(hand, i));
        }
      }
      if (bar.bar->key) key = *bar.bar->key;
    }
    return inks;
  }

  /// A change of clef stands small before the bar line.
  [[nodiscard]] Inks clef_before(std::size_t hand, std::size_t bar) const {
    constexpr double kGap = 0.4;
    Inks clef = draw_clef(system_.bars[bar].readings[hand], 0, kSmallClef);
    const double room = ends_repeat(right_of(*system_.bars[bar - 1].bar)) ? kRepeatRoom : 0;
    move_all(clef, system_.places[bar].begin - kGap - room - box_of(clef).right, 0);
    return clef;
  }

  [[nodiscard]] double repeat_room(std::size_t bar) const {
    return begins_repeat(left_of(*system_.bars[bar].bar)) ? kRepeatRoom : 0;
  }

  /// The number of each bar stands over its beginning, above what is there.
  void number_bars() {
    constexpr double kSize = 1.6;
    constexpr double kAir = 0.45;
    Skyline sky(end_ + 2);
    sky.add(staves_.front());
    for (std::size_t i = 0; i < system_.bars.size(); ++i) {
      if (system_.bars[i].goes_on && i > 0) continue;
      const double x = i == 0 ? begin_ : system_.places[i].begin;
      Ink number = text_ink(InkKind::bar_number,
                            {std::to_string(system_.bars[i].bar->bar), {x + 0.1, 0}, kSize},
                            InkStyle::quiet);
      number.move(0, sky.top(number.box.left, number.box.right, 0) - kAir - number.box.bottom);
      staves_.front().push_back(std::move(number));
    }
  }

  void set_staves_apart() {
    constexpr double kLeast = kStaffHeight + 5;
    constexpr double kAir = 1;
    tops_.assign(1, 0);
    if (lines_.size() < 2) return;
    Skyline upper(end_ + 2);
    Skyline lower(end_ + 2);
    upper.add(staves_[0]);
    lower.add(staves_[1]);
    tops_.push_back(std::max(kLeast, upper.distance_to(lower, kAir)));
  }

  void add_ribbon(std::size_t hand, const WatchNumbers& watch) {
    constexpr double kBeforeFirst = 2;
    constexpr double kNameSize = 1.6;
    constexpr double kNameGap = 0.3;
    RibbonPart part;
    for (std::size_t i = 0; i < system_.bars.size(); ++i) add_nodes(i, hand, part);
    if (part.nodes.empty()) return;
    part.begin = system_.first - kBeforeFirst;
    part.end = end_;
    const bool above = lines_[hand].hand() == Hand::right;
    Inks inks = draw_ribbon(lines_[hand], part, watch);
    for (const double y : {0.0, kRibbonHeight}) {
      inks.push_back(text_ink(InkKind::ribbon_name,
                              {y == 0 ? "right" : "left",
                               {part.begin - kNameGap, y + 0.33 * kNameSize},
                               kNameSize,
                               Anchor::end},
                              InkStyle::quiet));
    }
    move_all(inks, 0, tops_[hand] + place_beside(inks, hand, above));
    append(inks_, std::move(inks));
  }

  /// Where the ribbon lies from its staff, so that nothing of them meets.
  [[nodiscard]] double place_beside(const Inks& ribbon, std::size_t hand, bool above) const {
    constexpr double kAir = 0.5;
    Skyline staff(end_ + 2);
    Skyline own(end_ + 2);
    staff.add(staves_[hand]);
    own.add(ribbon);
    return above ? -own.distance_to(staff, kAir) : staff.distance_to(own, kAir);
  }

  void add_nodes(std::size_t bar, std::size_t hand, RibbonPart& part) {
    const MeasuredBar& measured = system_.bars[bar];
    for (std::size_t i = 0; i < measured.moments.size(); ++i) {
      const HandMoment& moment = measured.moments[i].hands[hand];
      const std::vector<double> places = moment.nodes.empty()
                                             ? std::vector<double>()
                                             : node_places(moment, system_.places[bar].moments[i]);
      for (std::size_t k = 0; k < places.size(); ++k) {
        part.nodes.push_back({moment.nodes[k].number, places[k]});
      }
    }
  }

  void draw_bar_lines(bool is_last) {
    upright(begin_, kThin);
    for (std::size_t i = 0; i < system_.bars.size(); ++i) {
      const MeasuredBar& bar = system_.bars[i];
      const double x = i == 0 ? system_.first : system_.places[i].begin;
      if (!bar.goes_on && begins_repeat(left_of(*bar.bar))) begin_repeat(x, i > 0);
      if (bar.ends) end_bar(i, is_last && i + 1 == system_.bars.size());
    }
  }

  void upright(double x, double width) {
    inks_.push_back(
        line_ink(InkKind::bar_line, {x, tops_.front()}, {x, tops_.back() + kStaffHeight}, width));
  }

  void dots(double x) {
    for (const double top : tops_) {
      for (const double y : {1.5, 2.5}) {
        inks_.push_back(glyph_ink(InkKind::bar_line, Glyph::dot, {x, top + y}));
      }
    }
  }

  void begin_repeat(double x, bool joins) {
    if (!joins) upright(x, kThick);
    upright(x + (joins ? 0.3 : 0.65), kThin);
    if (joins) upright(x, kThick);
    dots(x + 0.9);
  }

  void end_bar(std::size_t i, bool is_end) {
    const double x = system_.places[i].end;
    switch (right_of(*system_.bars[i].bar)) {
      case BarLineStyle::double_bar:
        upright(x - (is_end ? 0.85 : 0.55), kThin);
        upright(is_end ? x - kThick / 2 : x - kThin / 2, is_end ? kThick : kThin);
        return;
      case BarLineStyle::repeat_end:
      case BarLineStyle::repeat_both:
        dots(x - 1.35);
        upright(x - 0.6, kThin);
        upright(x - kThick / 2, kThick);
        return;
      case BarLineStyle::single:
      case BarLineStyle::repeat_start:
        upright(x - kThin / 2, kThin);
    }
  }

  void draw_brace() {
    constexpr double kHeightOfGlyph = 4;
    const double height = tops_.back() + kStaffHeight;
    Ink brace = glyph_ink(InkKind::brace, Glyph::brace, {0, height}, height / kHeightOfGlyph);
    brace.move(begin_ - 0.35 - brace.box.right, 0);
    inks_.push_back(std::move(brace));
  }

  System finished() {
    constexpr double kMargin = 0.3;
    const Box box = box_of(inks_);
    move_all(inks_, 0, kMargin - box.top);
    System system;
    system.height = box.height() + 2 * kMargin;
    system.inks = std::move(inks_);
    system.first_bar = system_.bars.front().bar->bar;
    system.last_bar = system_.bars.back().bar->bar;
    for (std::size_t hand = 0; hand < lines_.size(); ++hand) {
      RibbonPart part;
      for (std::size_t i = 0; i < system_.bars.size(); ++i) add_nodes(i, hand, part);
      if (part.nodes.empty()) {
        system.events.push_back({0, 0});
      } else {
        system.events.push_back({part.nodes.front().number, part.nodes.back().number + 1});
      }
    }
    return system;
  }

  static constexpr double kThin = 0.16;
  static constexpr double kThick = 0.5;

  const SharedLines& lines_;
  const BarsInSystem& system_;
  double begin_;
  double end_;
  std::vector<Inks> staves_;
  std::vector<double> tops_;
  Inks inks_;
};

}  // namespace

SystemMaker::SystemMaker(const AnalysedPassage& passage, SharedLines lines,
                         const WatchNumbersOfLines& watch, double width)
    : lines_(std::move(lines)),
      watch_(watch),
      width_(width),
      bars_(passage, lines_),
      readings_(readings_of(BarSequence(passage, lines_))),
      ties_(lines_.size()) {}

bool SystemMaker::has_bar(std::size_t number) {
  while (waiting_.size() <= number) {
    std::optional<NotatedBar> bar = bars_.next();
    if (!bar) return false;
    std::vector<Reading> readings;
    for (const Readings& of_line : readings_) readings.push_back(of_line[read_]);
    ++read_;
    waiting_.push_back(measured(std::move(*bar), lines_, readings, bars_.ticks_in_whole()));
  }
  return true;
}

double SystemMaker::begin_of_first() {
  const double begin = lines_.size() > 1 ? kBraceRoom : 0.1;
  double end = kLeastHead;
  for (std::size_t hand = 0; hand < lines_.size(); ++hand) {
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
    for (std::size_t hand = 0; i > 0 && hand < lines_.size(); ++hand) {
      const double signs = changes_in(bar, hand, key, 0).end;
      ends[i].before = std::max(ends[i].before, signs);
    }
    if (bar.ends && right_of(*bar.bar) != BarLineStyle::single) ends[i].after += kRepeatRoom;
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

void SystemMaker::split_first() {
  const double begin = begin_of_first();
  MeasuredBar& first = waiting_.front();
  const SpacedBar places = spaced({&first, 1}, ends_of(1), begin, kLeastStretch).front();
  if (places.end <= width_ || first.moments.size() < 2) return;
  std::size_t fit = 1;
  while (fit < first.moments.size() && places.moments[fit] + kHeadWidth < width_) ++fit;
  fit = std::min(fit, first.moments.size() - 1);
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
  double most = row.is_last ? kLooseStretch : 64;
  constexpr int kSteps = 30;
  for (int step = 0; step < kSteps; ++step) {
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
  const BarsInSystem bars{row.bars, row.places, row.first};
  System system = SystemDrawing(lines_, bars, lines_.size() > 1 ? kBraceRoom : 0.1)
                      .draw(key_, row.is_last, ties_, watch_);
  system.width = width_;
  for (const MeasuredBar& bar : row.bars) {
    if (bar.bar->key) key_ = *bar.bar->key;
  }
  return system;
}

}  // namespace fingerturn
