#include "write/page/staff/system_drawing.hpp"

#include "fingerturn/compare.hpp"
#include "write/page/ribbon/keys.hpp"
#include "write/page/staff/bar_signs.hpp"
#include "write/page/staff/endings.hpp"

#include <algorithm>
#include <string>
#include <utility>

namespace fingerturn {
namespace {

constexpr double kBraceRoom = 1.9;
constexpr double kEdge = 0.1;
constexpr double kSmallClef = 0.75;
constexpr double kBeforeFirst = 2;  // how far a ribbon's lines begin before the first bar

/// Draws a row of bars as a system.
class SystemDrawing {
 public:
  SystemDrawing(const RibbonsOfHands& hands, const BarsInSystem& system)
      : hands_(hands),
        system_(system),
        begin_(begin_of_staves(hands.size())),
        end_(system.places.back().end) {}

  System draw(const SystemState& state, const WatchNumbersOfLines& watch) {
    for (std::size_t hand = 0; hand < hands_.size(); ++hand) {
      staves_.push_back(staff_of(hand, state.key, (*state.open)[hand]));
    }
    number_bars();
    set_staves_apart();
    for (std::size_t hand = 0; hand < hands_.size(); ++hand) {
      add_ribbons(hand, watch[hand]);
      if (state.style.keys) add_keys(hand);
    }
    for (std::size_t hand = 0; hand < hands_.size(); ++hand) {
      move_all(staves_[hand], 0, tops_[hand]);
      append(inks_, std::move(staves_[hand]));
    }
    draw_bar_lines(state.is_last);
    if (hands_.size() > 1) draw_brace();
    if (!system_.signs->endings.empty()) add_endings();
    return finished();
  }

 private:
  Inks staff_of(std::size_t hand, KeySignature key, OpenBows& open) {
    constexpr double kThickness = 0.11;
    Inks inks;
    for (int line = 0; line <= 4; ++line) {
      const auto y = static_cast<double>(line);
      inks.push_back(line_ink(InkKind::staff_line, {begin_, y}, {end_, y}, kThickness));
    }
    append(inks, head_of(system_.bars.front(), hand, key, begin_).inks);
    append(inks, changes_of(hand, key));
    append(inks,
           draw_staff(system_, hands_[hand].front().written(), hand, hands_.size() == 1, open));
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
      if (system_.bars[i].again) {
        name_again(i, sky);
        continue;
      }
      const double x = i == 0 ? begin_ : system_.places[i].begin;
      Ink number = text_ink(InkKind::bar_number,
                            {std::to_string(system_.bars[i].bar->bar), {x + 0.1, 0}, kSize},
                            InkStyle::quiet);
      number.move(0, sky.top(number.box.left, number.box.right, 0) - kAir - number.box.bottom);
      staves_.front().push_back(std::move(number));
    }
  }

  void name_again(std::size_t bar, const Skyline& sky) {
    constexpr double kAir = 0.8;
    const double begin = bar == 0 ? system_.first : system_.places[bar].begin;
    Ink words = text_ink(InkKind::words,
                         {words_of(*system_.bars[bar].again),
                          {(begin + system_.places[bar].end) / 2, 0},
                          kAgainSize,
                          Anchor::middle},
                         InkStyle::strong);
    words.move(0, sky.top(words.box.left, words.box.right, 0) - kAir - words.box.bottom);
    staves_.front().push_back(std::move(words));
  }

  void set_staves_apart() {
    constexpr double kLeast = kStaffHeight + 5;
    constexpr double kAir = 1;
    tops_.assign(1, 0);
    if (hands_.size() < 2) return;
    Skyline upper(end_ + 2);
    Skyline lower(end_ + 2);
    upper.add(staves_[0]);
    lower.add(staves_[1]);
    tops_.push_back(std::max(kLeast, upper.distance_to(lower, kAir)));
  }

  /// The first ribbon stands above the others, which is next to the staff in the left hand only.
  void add_ribbons(std::size_t hand, const WatchNumbers& watch) {
    RibbonPart part;
    for (std::size_t i = 0; i < system_.bars.size(); ++i) add_nodes(i, hand, part);
    if (part.nodes.empty()) return;
    part.begin = system_.first - kBeforeFirst;
    part.end = end_;
    part.way_in = begin_of_way();
    part.way_out = end_of_way();
    const std::size_t count = hands_[hand].size();
    const bool above = hands_[hand].front().hand() == Hand::right;
    Inks beside = staves_[hand];
    for (std::size_t i = 0; i < count; ++i) {
      const std::size_t number = above ? count - 1 - i : i;
      Inks ribbon = draw_ribbon(hands_[hand][number], part, watch);
      add_names(part.begin, count > 1 ? fingering_label(number) : "", ribbon);
      move_all(ribbon, 0, place_beside(ribbon, beside, above));
      if (i + 1 < count) append(beside, Inks(ribbon));
      move_all(ribbon, 0, tops_[hand]);
      append(inks_, std::move(ribbon));
    }
  }

  /// Rows of keys on the outer side of the ribbon where the hand takes a place, as far as there is
  /// room for them beside one another.
  void add_keys(std::size_t hand) {
    constexpr double kAir = 0.8;
    constexpr std::size_t kFewest = 2;
    const AnalysedLine& line = hands_[hand].front();
    const bool above = line.hand() == Hand::right;
    RibbonPart part;
    for (std::size_t i = 0; i < system_.bars.size(); ++i) add_nodes(i, hand, part);
    Skyline sky(end_ + 2);
    sky.add(inks_);
    double taken = 0;
    for (const RibbonNode& node : part.nodes) {
      if (!takes_place(line, node.number)) continue;
      const FingersOnKeys fingers = fingers_on_keys(line, node.number);
      if (fingers.size() < kFewest) continue;
      Inks keys = draw_keys(fingers);
      const double width = box_of(keys).right;
      const double left = std::min(node.x - kNodeRadius, end_ - width);
      if (left < taken) continue;
      taken = left + width + kAir;
      const double y = above ? sky.top(left, left + width, 0) - kAir - box_of(keys).bottom
                             : sky.bottom(left, left + width, 0) + kAir;
      move_all(keys, left, y);
      append(inks_, std::move(keys));
    }
  }

  /// Bars that are named have no part in the forearm's way.
  [[nodiscard]] double begin_of_way() const {
    std::size_t bar = 0;
    while (bar < system_.bars.size() && system_.bars[bar].again) ++bar;
    return bar == 0 ? system_.first - kBeforeFirst : system_.places[bar - 1].end;
  }
  [[nodiscard]] double end_of_way() const {
    std::size_t bar = system_.bars.size();
    while (bar > 0 && system_.bars[bar - 1].again) --bar;
    return bar == system_.bars.size() ? end_ : system_.places[bar].begin;
  }

  /// What the lines of a ribbon stand for and, of several, which fingering it is.
  static void add_names(double begin, const std::string& letter, Inks& ribbon) {
    constexpr double kNameSize = 1.6;
    constexpr double kLetterSize = 2.2;
    constexpr double kNameGap = 0.3;
    double left = begin;
    for (const double y : {0.0, kRibbonHeight}) {
      ribbon.push_back(text_ink(InkKind::ribbon_name,
                                {y == 0 ? "right" : "left",
                                 {begin - kNameGap, y + 0.33 * kNameSize},
                                 kNameSize,
                                 Anchor::end},
                                InkStyle::quiet));
      left = std::min(left, ribbon.back().box.left);
    }
    if (letter.empty()) return;
    const Point at{left - kNameGap, kRibbonHeight / 2 + 0.35 * kLetterSize};
    ribbon.push_back(
        text_ink(InkKind::ribbon_name, {letter, at, kLetterSize, Anchor::end}, InkStyle::strong));
  }

  /// Where the ribbon lies from what is beside it, so that nothing of them meets.
  [[nodiscard]] double place_beside(const Inks& ribbon, const Inks& beside, bool above) const {
    constexpr double kAir = 0.5;
    Skyline staff(end_ + 2);
    Skyline own(end_ + 2);
    staff.add(beside);
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
    brace.move(std::max(begin_ - 0.3 - brace.box.right, -brace.box.left), 0);
    inks_.push_back(std::move(brace));
  }

  void add_endings() {
    Skyline sky(end_ + 2);
    sky.add(inks_);
    append(inks_, draw_endings(system_, sky));
  }

  System finished() {
    constexpr double kMargin = 0.3;
    const Box box = box_of(inks_);
    move_all(inks_, 0, kMargin - box.top);
    System system;
    system.height = box.height() + 2 * kMargin;
    system.inks = std::move(inks_);
    system.first_bar = system_.bars.front().bar->bar;
    const MeasuredBar& last = system_.bars.back();
    system.last_bar = last.again ? last.again->bars.last : last.bar->bar;
    return system;
  }

  static constexpr double kThin = 0.16;
  static constexpr double kThick = 0.5;

  const RibbonsOfHands& hands_;
  const BarsInSystem& system_;
  double begin_;
  double end_;
  std::vector<Inks> staves_;
  std::vector<double> tops_;
  Inks inks_;
};

}  // namespace

double begin_of_staves(std::size_t hands) noexcept { return hands > 1 ? kBraceRoom : kEdge; }

System draw_system(const RibbonsOfHands& hands, const BarsInSystem& bars, const SystemState& state,
                   const WatchNumbersOfLines& watch) {
  return SystemDrawing(hands, bars).draw(state, watch);
}

}  // namespace fingerturn
