#include "write/page/staff/stems.hpp"

#include <algorithm>
#include <cmath>
#include <span>
#include <vector>

namespace fingerturn {
namespace {

constexpr double kStemThickness = 0.12;
constexpr double kStemLength = 3.5;
constexpr double kShortestInBeam = 2.7;
constexpr double kBeamThickness = 0.5;
constexpr double kBeamStep = 0.75;
constexpr int kQuarter = 2;

using Chords = std::span<const PlacedChord>;

int beams_of(const NotatedChord& chord) {
  return chord.value ? std::max(0, chord.value->halvings - kQuarter) : 0;
}

double stem_at(const PlacedChord& placed) { return placed.x + placed.chord.stem_x(); }

/// Where the stem begins: at the head that is furthest from its end.
double root_of(const StaffChord& chord) {
  return y_of(chord.stem_up ? chord.positions.front() : chord.positions.back());
}
/// The head that is nearest to the end of the stem.
double nearest_of(const StaffChord& chord) {
  return y_of(chord.stem_up ? chord.positions.back() : chord.positions.front());
}

Ink stem_ink(const PlacedChord& placed, double end) {
  constexpr double kIntoHead = 0.17;
  const double scale = placed.chord.scale();
  const double begin =
      root_of(placed.chord) + (placed.chord.stem_up ? -kIntoHead : kIntoHead) * scale;
  const double x = stem_at(placed);
  return line_ink(InkKind::stem, {x, begin}, {x, end}, kStemThickness);
}

/// The end of a stem that has no beam: an octave away, and on ledger lines up to the middle line.
double free_end(const StaffChord& chord) {
  const int flags = beams_of(*chord.chord);
  const double length =
      (kStemLength + kBeamStep * std::max(0, flags - 2)) * (chord.chord->grace ? 0.75 : 1);
  const double end = nearest_of(chord) + (chord.stem_up ? -length : length);
  if (chord.chord->grace) return end;
  return chord.stem_up ? std::min(end, kMiddleLine) : std::max(end, kMiddleLine);
}

Glyph flag_of(int flags, bool up) {
  constexpr std::array kUp{Glyph::flag_8_up, Glyph::flag_16_up, Glyph::flag_32_up,
                           Glyph::flag_64_up, Glyph::flag_128_up};
  constexpr std::array kDown{Glyph::flag_8_down, Glyph::flag_16_down, Glyph::flag_32_down,
                             Glyph::flag_64_down, Glyph::flag_128_down};
  const auto place = static_cast<std::size_t>(flags - 1);
  return up ? kUp.at(place) : kDown.at(place);
}

void draw_slash(double x, double end, Inks& inks) {
  inks.push_back(line_ink(InkKind::flag, {x - 0.5, end + 1.3}, {x + 0.8, end + 0.45}, 0.12));
}

void draw_alone(const PlacedChord& placed, Inks& inks) {
  if (!placed.chord.has_stem()) return;
  const double end = free_end(placed.chord);
  inks.push_back(stem_ink(placed, end));
  const int flags = beams_of(*placed.chord.chord);
  if (flags == 0) return;
  const double x = stem_at(placed) - kStemThickness / 2;
  inks.push_back(glyph_ink(InkKind::flag, flag_of(flags, placed.chord.stem_up), {x, end},
                           placed.chord.scale()));
  if (placed.chord.chord->grace) draw_slash(x, end, inks);
}

/// The line on which the stems of a beam end.
struct BeamLine {
  double x = 0;
  double y = 0;
  double slope = 0;
  bool up = true;

  [[nodiscard]] double at(double other_x) const noexcept { return y + slope * (other_x - x); }
};

/// How steep: as the outer notes lie, but never much, and level where inner notes lie outside them.
double slope_of(Chords chords, bool up) {
  constexpr double kMostRise = 1.25;
  constexpr double kMostSlope = 0.2;
  const double first = nearest_of(chords.front().chord);
  const double last = nearest_of(chords.back().chord);
  for (const PlacedChord& placed : chords.subspan(1, chords.size() - 2)) {
    const double y = nearest_of(placed.chord);
    if (up ? y < std::min(first, last) : y > std::max(first, last)) return 0;
  }
  const double width = stem_at(chords.back()) - stem_at(chords.front());
  if (width <= 0) return 0;
  const double rise = std::clamp((last - first) / 2, -kMostRise, kMostRise);
  return std::clamp(rise / width, -kMostSlope, kMostSlope);
}

BeamLine line_of(Chords chords) {
  const bool up = chords.front().chord.stem_up;
  const double scale = chords.front().chord.scale();
  BeamLine line{stem_at(chords.front()), 0, slope_of(chords, up), up};
  double y = up ? 1e9 : -1e9;
  int most = 0;
  for (const PlacedChord& placed : chords) {
    const int beams = beams_of(*placed.chord.chord);
    most = std::max(most, beams);
    const double inner = kBeamStep * std::max(0, beams - 1) * scale;
    const double least = (kShortestInBeam + inner) * scale;
    const double tilt = line.slope * (stem_at(placed) - line.x);
    const double end = nearest_of(placed.chord) + (up ? -least : least) - tilt;
    y = up ? std::min(y, end) : std::max(y, end);
  }
  line.y = y;
  // Notes on many ledger lines have their beams within the staff.
  if (scale == 1) {
    const double edge = line.slope * (stem_at(chords.back()) - line.x) / 2;
    line.y = up ? std::min(line.y, kMiddleLine - edge) : std::max(line.y, kMiddleLine - edge);
  }
  return line;
}

/// One beam of a level, from the first to the last of its chords; half a beam where it is alone.
void draw_level(Chords chords, std::size_t begin, std::size_t end, int level, const BeamLine& line,
                Inks& inks) {
  constexpr double kHalf = 1.1;
  const double scale = chords[begin].chord.scale();
  double from = stem_at(chords[begin]);
  double to = stem_at(chords[end - 1]);
  if (end - begin == 1) {
    const bool to_left = begin > 0;
    (to_left ? from : to) += (to_left ? -kHalf : kHalf) * scale;
  }
  from -= kStemThickness / 2;
  to += kStemThickness / 2;
  const double step = level * kBeamStep * scale;
  const double down = line.up ? step : -step - kBeamThickness * scale;
  inks.push_back(
      beam_ink({from, line.at(from) + down}, {to, line.at(to) + down}, kBeamThickness * scale));
}

void draw_beam(Chords chords, Inks& inks) {
  const BeamLine line = line_of(chords);
  for (const PlacedChord& placed : chords) {
    inks.push_back(stem_ink(placed, line.at(stem_at(placed))));
  }
  for (int level = 0;; ++level) {
    bool any = false;
    for (std::size_t begin = 0, end = 0; begin < chords.size(); begin = end) {
      end = begin + 1;
      if (beams_of(*chords[begin].chord.chord) <= level) continue;
      while (end < chords.size() && beams_of(*chords[end].chord.chord) > level) ++end;
      draw_level(chords, begin, end, level, line, inks);
      any = true;
    }
    if (!any) return;
  }
}

}  // namespace

Inks draw_stems(const std::vector<PlacedChord>& voice) {
  Inks inks;
  std::vector<bool> drawn(voice.size());
  for (std::size_t i = 0; i < voice.size(); ++i) {
    if (drawn[i]) continue;
    const NotatedChord& first = *voice[i].chord.chord;
    // Grace notes may stand between the notes of a beam, and it may go on in the next system.
    std::vector<PlacedChord> beamed;
    for (std::size_t k = i; first.beam != BeamPart::none && k < voice.size(); ++k) {
      if (voice[k].chord.chord->grace != first.grace) continue;
      drawn[k] = true;
      beamed.push_back(voice[k]);
      if (voice[k].chord.chord->beam == BeamPart::ends) break;
    }
    if (beamed.size() > 1) {
      draw_beam(beamed, inks);
    } else {
      draw_alone(voice[i], inks);
    }
  }
  return inks;
}

}  // namespace fingerturn
