#include "write/page/staff/staff_chord.hpp"

#include <algorithm>
#include <cstdlib>
#include <set>

namespace fingerturn {
namespace {

constexpr double kHalfStem = 0.06;

Glyph head_of(const NotatedChord& chord) {
  if (!chord.value || chord.value->halvings >= 2) return Glyph::head_black;
  if (chord.value->halvings == 1) return Glyph::head_half;
  return chord.value->halvings == 0 ? Glyph::head_whole : Glyph::head_double_whole;
}

Glyph rest_of(const NoteValue& value) {
  constexpr std::array kRests{Glyph::rest_double_whole, Glyph::rest_whole, Glyph::rest_half,
                              Glyph::rest_quarter,      Glyph::rest_8,     Glyph::rest_16,
                              Glyph::rest_32,           Glyph::rest_64,    Glyph::rest_128};
  return kRests.at(static_cast<std::size_t>(value.halvings + 1));
}

/// Whether the heads of two chords can stand in one place: they are apart, or the same.
bool share_place(const StaffChord& upper, const StaffChord& lower) {
  if (upper.positions.front() - lower.positions.back() >= 2) return true;
  const bool same_heads = head_of(*upper.chord) == head_of(*lower.chord) && upper.chord->value &&
                          lower.chord->value &&
                          upper.chord->value->dots == lower.chord->value->dots;
  return same_heads && upper.positions.size() == 1 && lower.positions.size() == 1 &&
         upper.positions.front() == lower.positions.front();
}

void draw_ledgers(const StaffChord& chord, const std::vector<double>& places, Inks& inks) {
  constexpr double kBeyond = 0.3;
  constexpr double kThickness = 0.16;
  std::set<int> lines;
  for (const int position : chord.positions) {
    for (int line = -2; line >= position; line -= 2) lines.insert(line);
    for (int line = 10; line <= position; line += 2) lines.insert(line);
  }
  if (lines.empty()) return;
  const auto [left, right] = std::ranges::minmax(places);
  for (const int line : lines) {
    const double y = y_of(line);
    inks.push_back(line_ink(InkKind::ledger, {left - kBeyond * chord.scale(), y},
                            {right + (kHeadWidth + kBeyond) * chord.scale(), y}, kThickness));
  }
}

void draw_heads(const StaffChord& chord, Inks& inks) {
  const std::vector<double> places = head_places(chord);
  draw_ledgers(chord, places, inks);
  for (std::size_t i = 0; i < places.size(); ++i) {
    inks.push_back(glyph_ink(InkKind::head, head_of(*chord.chord),
                             {places[i], y_of(chord.positions[i])}, chord.scale()));
  }
}

/// Dots stand in spaces, each in its own.
void draw_dots(const StaffChord& chord, double right, Inks& inks) {
  constexpr double kGap = 0.35;
  constexpr double kStep = 0.6;
  if (!chord.chord->value) return;
  std::set<int> taken;
  for (std::size_t i = chord.positions.size(); i-- > 0;) {
    int space = chord.positions[i] % 2 == 0 ? chord.positions[i] + 1 : chord.positions[i];
    if (taken.contains(space)) space -= 2;
    if (!taken.insert(space).second) continue;
    for (int dot = 0; dot < chord.chord->value->dots; ++dot) {
      inks.push_back(
          glyph_ink(InkKind::dot, Glyph::dot, {right + kGap + dot * kStep, y_of(space)}));
    }
  }
}

void draw_rest(const StaffChord& chord, Inks& inks) {
  const NotatedChord& rest = *chord.chord;
  if (!rest.value) return;
  const double y = rest.value->halvings == 0 ? 1 : kMiddleLine;
  inks.push_back(glyph_ink(InkKind::rest, rest_of(*rest.value), {0, y}));
  const double right = inks.back().box.right;
  constexpr double kGap = 0.35;
  constexpr double kStep = 0.6;
  for (int dot = 0; dot < rest.value->dots; ++dot) {
    inks.push_back(glyph_ink(InkKind::dot, Glyph::dot, {right + kGap + dot * kStep, y_of(5)}));
  }
}

struct WantedSign {
  int position = 0;
  Glyph glyph = Glyph::natural;
  double scale = 1;
};

/// Outermost signs first, from above and below in turn, so that the columns stay few.
std::vector<WantedSign> wanted_signs(const std::vector<StaffChord>& chords) {
  std::vector<WantedSign> signs;
  for (const StaffChord& chord : chords) {
    for (std::size_t i = 0; i < chord.positions.size(); ++i) {
      const auto& sign = chord.chord->heads[i].sign;
      if (sign) signs.push_back({chord.positions[i], sign_of(*sign), chord.scale()});
    }
  }
  std::ranges::sort(signs, std::greater{}, &WantedSign::position);
  std::vector<WantedSign> in_turn;
  for (std::size_t first = 0, last = signs.size(); first < last;) {
    in_turn.push_back(signs[first++]);
    if (first < last) in_turn.push_back(signs[--last]);
  }
  return in_turn;
}

bool meets(const Box& one, const Box& other) {
  constexpr double kAir = 0.05;
  return one.top < other.bottom + kAir && other.top < one.bottom + kAir;
}

/// Accidentals stand in columns left of the heads.
void draw_signs(const std::vector<StaffChord>& chords, double left, Inks& inks) {
  constexpr double kGap = 0.25;
  std::vector<Inks> columns;
  for (const WantedSign& sign : wanted_signs(chords)) {
    const Ink ink = glyph_ink(InkKind::sign, sign.glyph, {0, y_of(sign.position)}, sign.scale);
    auto column = std::ranges::find_if(columns, [&](const Inks& taken) {
      return std::ranges::none_of(taken,
                                  [&](const Ink& other) { return meets(ink.box, other.box); });
    });
    if (column == columns.end()) column = columns.insert(columns.end(), Inks());
    column->push_back(ink);
  }
  for (Inks& column : columns) {
    const double width = box_of(column).right;
    left -= width + kGap;
    for (Ink& ink : column) ink.move(left + width - ink.box.right, 0);
    append(inks, std::move(column));
  }
}

}  // namespace

double StaffChord::stem_x() const noexcept {
  return shift + (stem_up ? kHeadWidth * scale() - kHalfStem : kHalfStem);
}

bool StaffChord::has_stem() const noexcept {
  return chord->value && chord->value->halvings >= 1 && !positions.empty();
}

bool stems_up(std::span<const StaffChord> chords) noexcept {
  int above = 0;
  int below = 0;
  for (const StaffChord& chord : chords) {
    if (chord.positions.empty()) continue;
    above = std::max(above, chord.positions.back() - 4);
    below = std::max(below, 4 - chord.positions.front());
  }
  return below > above;
}

void set_apart(std::vector<StaffChord>& chords) {
  constexpr double kApart = kHeadWidth + 0.12;
  const auto of_voice = [&](std::size_t voice) {
    return std::ranges::find_if(chords, [voice](const StaffChord& chord) {
      return chord.voice == voice && !chord.positions.empty() && !chord.chord->grace;
    });
  };
  const auto upper = of_voice(0);
  const auto lower = of_voice(1);
  if (upper == chords.end() || lower == chords.end() || share_place(*upper, *lower)) return;
  // Neighbours stand apart with their stems on the inner sides, so that the lower comes first.
  const bool neighbours = upper->positions.front() - lower->positions.back() == 1;
  (neighbours ? upper : lower)->shift = neighbours ? kApart - 0.2 : kApart;
}

std::vector<double> head_places(const StaffChord& chord) {
  const double width = (kHeadWidth - 2 * kHalfStem) * chord.scale();
  std::vector<double> places(chord.positions.size(), chord.shift);
  const auto count = static_cast<std::ptrdiff_t>(places.size());
  bool aside = false;
  // From the head at the stem's far end on.
  for (std::ptrdiff_t step = 1; step < count; ++step) {
    const std::ptrdiff_t i = chord.stem_up ? step : count - 1 - step;
    const std::ptrdiff_t before = chord.stem_up ? i - 1 : i + 1;
    const auto at = static_cast<std::size_t>(i);
    const bool near =
        std::abs(chord.positions[at] - chord.positions[static_cast<std::size_t>(before)]) < 2;
    aside = near && !aside;
    if (aside) places[at] += chord.stem_up ? width : -width;
  }
  return places;
}

Glyph sign_of(int alter) noexcept {
  switch (alter) {
    case -2:
      return Glyph::double_flat;
    case -1:
      return Glyph::flat;
    case 1:
      return Glyph::sharp;
    case 2:
      return Glyph::double_sharp;
    default:
      return Glyph::natural;
  }
}

Inks draw_moment(const std::vector<StaffChord>& chords) {
  Inks inks;
  for (const StaffChord& chord : chords) {
    if (chord.positions.empty()) {
      draw_rest(chord, inks);
    } else {
      draw_heads(chord, inks);
    }
  }
  const Box heads = box_of(inks);
  draw_signs(chords, heads.left, inks);
  for (const StaffChord& chord : chords) draw_dots(chord, heads.right, inks);
  return inks;
}

}  // namespace fingerturn
