#include "write/page/staff/bar_signs.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <string>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr double kClefGap = 0.55;
constexpr std::array kSharpPlaces{8, 5, 9, 6, 3, 7, 4};
constexpr std::array kFlatPlaces{4, 7, 3, 6, 2, 5, 1};

}  // namespace

std::string words_of(const BarsAgain& again) {
  const auto range = [](BarRange bars) { return fmt::format("{}–{}", bars.first, bars.last); };
  return fmt::format("{} as {}", range(again.bars), range(again.as));
}

double room_of(const BarsAgain& again) {
  constexpr double kEmptyBar = 5;
  return std::max(0.0, text_width(words_of(again), kAgainSize) - kEmptyBar);
}

bool begins_repeat(BarLineStyle style) noexcept {
  return style == BarLineStyle::repeat_start || style == BarLineStyle::repeat_both;
}
bool ends_repeat(BarLineStyle style) noexcept {
  return style == BarLineStyle::repeat_end || style == BarLineStyle::repeat_both;
}

BarLineStyle left_of(const NotatedBar& bar) noexcept {
  BarLineStyle style = BarLineStyle::single;
  for (const NotatedHand& hand : bar.hands) style = std::max(style, hand.left);
  return style;
}
BarLineStyle right_of(const NotatedBar& bar) noexcept {
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

BarSigns changes_in(const MeasuredBar& bar, std::size_t hand, KeySignature before, double x) {
  BarSigns signs{{}, x};
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

BarSigns head_of(const MeasuredBar& bar, std::size_t hand, KeySignature key, double x) {
  BarSigns signs{draw_clef(bar.readings[hand], x + kClefGap, 1), 0};
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

Inks draw_clef(Reading reading, double x, double scale) {
  constexpr double kGLine = 3;
  constexpr double kFLine = 1;
  const Glyph clef = clef_of(reading);
  return {glyph_ink(InkKind::clef, clef, {x, clef == Glyph::g_clef ? kGLine : kFLine}, scale)};
}

Inks draw_key(KeySignature key, KeySignature before, Reading reading, double x) {
  constexpr double kGap = 0.12;
  const KeySignature drawn = key.fifths == 0 ? before : key;
  const int lower = clef_of(reading) == Glyph::g_clef ? 0 : 2;
  Inks inks;
  for (int i = 0; i < std::abs(drawn.fifths); ++i) {
    const auto place = static_cast<std::size_t>(i);
    const int position =
        (drawn.fifths > 0 ? kSharpPlaces.at(place) : kFlatPlaces.at(place)) - lower;
    Glyph glyph = drawn.fifths > 0 ? Glyph::sharp : Glyph::flat;
    if (key.fifths == 0) glyph = Glyph::natural;
    inks.push_back(glyph_ink(InkKind::key_sign, glyph, {x, y_of(position)}));
    x = inks.back().box.right + kGap;
  }
  return inks;
}

Inks draw_meter(const Meter& meter, double x) {
  const auto row = [](int number, double y) {
    Inks inks;
    double right = 0;
    for (const char digit : std::to_string(number)) {
      const auto place = static_cast<std::size_t>(digit - '0');
      const auto glyph = static_cast<Glyph>(static_cast<std::size_t>(Glyph::meter_0) + place);
      inks.push_back(glyph_ink(InkKind::meter, glyph, {right, y}));
      right = inks.back().box.right;
    }
    return inks;
  };
  Inks upper = row(meter.beats, 1);
  Inks lower = row(meter.beat_type, 3);
  const double width = std::max(box_of(upper).right, box_of(lower).right);
  move_all(upper, x + (width - box_of(upper).right) / 2, 0);
  move_all(lower, x + (width - box_of(lower).right) / 2, 0);
  append(upper, std::move(lower));
  return upper;
}

}  // namespace fingerturn
