#include "write/page/staff/staff.hpp"

#include "write/page/staff/stems.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace fingerturn {
namespace {

constexpr double kSignAir = 0.4;

/// The chords of a voice in a bar, where they stand.
std::vector<PlacedChord> voice_of(const MeasuredBar& bar, const SpacedBar& places, std::size_t hand,
                                  std::size_t voice) {
  std::vector<PlacedChord> placed;
  for (std::size_t i = 0; i < bar.moments.size(); ++i) {
    for (const StaffChord& chord : bar.moments[i].hands[hand].chords) {
      if (chord.voice == voice) placed.push_back({chord, places.moments[i]});
    }
  }
  return placed;
}

bool is_wide_rest(const NotatedVoice& voice, Ticks length) {
  return voice.size() == 1 && voice.front().is_rest() && voice.front().length == length;
}

class StaffDrawing {
 public:
  StaffDrawing(const BarsInSystem& system, const Line& line, std::size_t hand, bool alone,
               OpenBows& open)
      : system_(system),
        line_(line),
        hand_(hand),
        alone_(alone),
        ties_(open.ties),
        loudness_(open.loudness),
        slurs_(open.slurs, system.first),
        sky_(system.places.empty() ? 0 : system.places.back().end + 2) {}

  Inks draw() {
    for (auto& [key, tie] : ties_) tie.x = system_.first;
    for (std::size_t i = 0; i < system_.bars.size(); ++i) draw_bar(i);
    end_ties();
    sky_.add(inks_);
    for (std::size_t i = 0; i < system_.bars.size(); ++i) draw_above(i);
    if (!system_.places.empty()) append(inks_, slurs_.draw(system_.places.back().end, sky_));
    draw_rest_fermatas();
    draw_octaves();
    add(draw_loudness(system_, line_.hand, alone_, loudness_, sky_));
    return std::move(inks_);
  }

 private:
  void draw_bar(std::size_t number) {
    const MeasuredBar& bar = system_.bars[number];
    const SpacedBar& places = system_.places[number];
    if (!bar.goes_on && is_wide_rest(bar.bar->hands[hand_].voices[0], bar.bar->length)) {
      draw_wide_rest(places);
    }
    const bool two_voices = bar.bar->hands[hand_].has_two_voices();
    slurs_.begin_bar(bar.bar->bar);
    for (std::size_t i = 0; i < bar.moments.size(); ++i) {
      const HandMoment& moment = bar.moments[i].hands[hand_];
      Inks heads = moment.heads;
      move_all(heads, places.moments[i], 0);
      append(inks_, std::move(heads));
      for (const StaffChord& chord : moment.chords) {
        draw_ties(chord, places.moments[i], bar);
        slurs_.add(line_, chord, places.moments[i], two_voices);
      }
    }
    for (std::size_t voice = 0; voice < 2; ++voice) {
      append(inks_, draw_stems(voice_of(bar, places, hand_, voice)));
    }
  }

  void draw_wide_rest(const SpacedBar& places) {
    Ink rest = glyph_ink(InkKind::rest, Glyph::rest_whole, {0, 1});
    const double begin = std::max(places.begin, system_.first);
    rest.move((begin + places.end - rest.box.width()) / 2, 0);
    inks_.push_back(std::move(rest));
  }

  void draw_ties(const StaffChord& chord, double x, const MeasuredBar& bar) {
    const std::vector<double> places = head_places(chord);
    for (std::size_t i = 0; i < places.size(); ++i) {
      const NotatedHead& head = chord.chord->heads[i];
      const int key = midi_number(head.pitch);
      const double left = x + places[i];
      if (head.tied_to) end_tie(key, left);
      if (!head.tied_on) continue;
      bool above = !chord.stem_up;
      if (bar.bar->hands[hand_].has_two_voices()) {
        above = chord.voice == 0;
      } else if (places.size() > 1) {
        above = 2 * i + 1 > places.size() || (2 * i + 1 == places.size() && above);
      }
      ties_[key] = {left + kHeadWidth * chord.scale(), y_of(chord.positions[i]), above};
    }
  }

  void end_tie(int key, double x) {
    const auto tie = ties_.find(key);
    if (tie == ties_.end()) return;
    add_tie(tie->second, x);
    ties_.erase(tie);
  }

  void add_tie(const TieFrom& tie, double to) {
    constexpr double kGap = 0.12;
    constexpr double kShortest = 0.9;
    constexpr double kBesideHead = 0.55;
    const double from = tie.x + kGap;
    const double end = std::max(to - kGap, from + kShortest);
    const double bend = std::min(0.9, 0.3 + 0.06 * (end - from));
    const double y = tie.y + (tie.above ? -kBesideHead : kBesideHead);
    inks_.push_back(bow_ink(InkKind::tie, {from, y}, {end, y}, tie.above ? -bend : bend));
  }

  /// Ties that go on end with the system, and begin anew in the next.
  void end_ties() {
    if (system_.places.empty()) return;
    for (const auto& [key, tie] : ties_) add_tie(tie, system_.places.back().end);
  }

  void draw_above(std::size_t number) {
    const MeasuredBar& bar = system_.bars[number];
    const SpacedBar& places = system_.places[number];
    for (std::size_t voice = 0; voice < 2; ++voice) {
      const std::vector<PlacedChord> chords = voice_of(bar, places, hand_, voice);
      draw_tuplets(chords);
      for (const PlacedChord& placed : chords) draw_signs(placed);
    }
  }

  void draw_tuplets(const std::vector<PlacedChord>& voice) {
    for (std::size_t begin = 0; begin < voice.size(); ++begin) {
      if (voice[begin].chord.chord->tuplet != BeamPart::begins) continue;
      std::size_t end = begin + 1;
      while (end + 1 < voice.size() && voice[end].chord.chord->tuplet == BeamPart::inside) ++end;
      if (end < voice.size()) draw_tuplet(voice, begin, end);
    }
  }

  void draw_tuplet(const std::vector<PlacedChord>& voice, std::size_t begin, std::size_t last) {
    constexpr double kDigitHeight = 1.55;
    std::size_t first_note = begin;
    while (first_note < last && voice[first_note].chord.chord->is_rest()) ++first_note;
    const bool above = voice[first_note].chord.stem_up;
    const double left = voice[begin].x;
    const double right = voice[last].x + kHeadWidth;
    const bool beamed = voice[begin].chord.chord->beam == BeamPart::begins &&
                        voice[last].chord.chord->beam == BeamPart::ends;
    const double edge = above ? sky_.top(left, right, 0) - kSignAir
                              : sky_.bottom(left, right, kStaffHeight) + kSignAir + kDigitHeight;
    const Inks digits =
        digits_of(voice[begin].chord.chord->value->actual, (left + right) / 2, edge);
    if (!beamed) draw_bracket({left, right}, box_of(digits), edge - kDigitHeight / 2, above);
    add(digits);
  }

  static Inks digits_of(int number, double middle, double y) {
    Inks inks;
    double x = 0;
    for (const char digit : std::to_string(number)) {
      const auto place = static_cast<std::size_t>(digit - '0');
      const auto glyph = static_cast<Glyph>(static_cast<std::size_t>(Glyph::tuplet_0) + place);
      inks.push_back(glyph_ink(InkKind::tuplet, glyph, {x, y}));
      x = inks.back().box.right;
    }
    move_all(inks, middle - x / 2, 0);
    return inks;
  }

  void draw_bracket(std::array<double, 2> ends, const Box& digits, double y, bool above) {
    constexpr double kThickness = 0.14;
    constexpr double kHook = 0.7;
    constexpr double kGap = 0.3;
    const double hook = y + (above ? kHook : -kHook);
    const auto line = [&](Point from, Point to) {
      add({line_ink(InkKind::tuplet, from, to, kThickness)});
    };
    line({ends[0], hook}, {ends[0], y});
    line({ends[1], y}, {ends[1], hook});
    if (digits.left - kGap > ends[0]) line({ends[0], y}, {digits.left - kGap, y});
    if (digits.right + kGap < ends[1]) line({digits.right + kGap, y}, {ends[1], y});
  }

  /// What stands above a note: a trill or tremolo, a breath, a fermata, the wave of a rolled chord
  /// beside it.
  void draw_signs(const PlacedChord& placed) {
    const NotatedChord& chord = *placed.chord.chord;
    if (chord.ornament != Ornament::none) {
      const Glyph glyph = chord.ornament == Ornament::trill ? Glyph::trill : Glyph::tremolo;
      add_above(glyph_ink(InkKind::ornament, glyph, {placed.x, 0}));
    }
    if (chord.breath_after) {
      add_above(glyph_ink(InkKind::breath, Glyph::breath, {placed.x + kHeadWidth + 0.6, 0}));
    }
    if (has_fermata(chord)) add_fermata(placed.x);
    if (chord.rolled) draw_wave(placed);
  }

  void draw_rest_fermatas() {
    if (system_.signs == nullptr) return;
    const auto& all = system_.signs->rest_fermatas;
    auto fermata = std::ranges::lower_bound(all, BarMoment{system_.bars.front().bar->bar}, {},
                                            &RestFermata::at);
    for (; fermata != all.end() && !is_after(system_, fermata->at); ++fermata) {
      if (!alone_ && fermata->hand != line_.hand) continue;
      if (const auto place = place_of(system_, fermata->at)) add_fermata(place->x);
    }
  }

  void add_fermata(double x) {
    Ink ink = glyph_ink(InkKind::fermata, Glyph::fermata, {x, 0});
    ink.move((kHeadWidth - ink.box.width()) / 2 + x - ink.box.left, 0);
    add_above(std::move(ink));
  }

  /// Puts a sign over all that is there.
  void add_above(Ink ink) {
    ink.move(0, sky_.top(ink.box.left, ink.box.right, 0) - kSignAir - ink.box.bottom);
    add({std::move(ink)});
  }

  [[nodiscard]] bool has_fermata(const NotatedChord& chord) const {
    return std::ranges::any_of(chord.heads, [&](const NotatedHead& head) {
      const Note& note = line_.events[head.place.event].notes[head.place.note];
      return note.fermata && (note.held || !head.tied_to);
    });
  }

  void draw_wave(const PlacedChord& placed) {
    constexpr double kStep = 0.55;
    constexpr double kBeside = 0.65;
    const std::vector<int>& positions = placed.chord.positions;
    const double x = placed.x - kBeside;
    double bend = 0.3;
    for (double y = y_of(positions.back()) - kStep; y < y_of(positions.front()) + kStep;
         y += kStep) {
      Ink ink = line_ink(InkKind::arpeggio, {x + bend / 2, y}, {x - bend / 2, y + kStep}, 0.14);
      bend = -bend;
      inks_.push_back(std::move(ink));
    }
  }

  /// "8va" and a line over, or below, neighbouring bars that are read an octave away.
  void draw_octaves() {
    const std::size_t count = system_.bars.size();
    for (std::size_t begin = 0, end = 0; begin < count; begin = end) {
      end = begin + 1;
      const Reading reading = system_.bars[begin].readings[hand_];
      while (end < count && system_.bars[end].readings[hand_] == reading) ++end;
      if (octaves_of(reading) == 0) continue;
      const SpacedBar& first = system_.places[begin];
      const double left = first.moments.empty() ? std::max(first.begin, system_.first) + 0.5
                                                : first.moments.front() - 0.5;
      draw_octave(left, system_.places[end - 1].end - 0.3, octaves_of(reading) > 0);
    }
  }

  void draw_octave(double left, double right, bool above) {
    constexpr double kSize = 1.9;
    constexpr double kDash = 0.9;
    constexpr double kThickness = 0.12;
    constexpr double kHook = 0.9;
    constexpr double kShortest = 4;
    left = std::min(left, right - kShortest);
    const double y = above ? sky_.top(left, right, 0) - 2 * kSignAir
                           : sky_.bottom(left, right, kStaffHeight) + 2 * kSignAir + 0.75 * kSize;
    const double line = y - 0.35 * kSize;
    Inks inks{text_ink(InkKind::ottava, {above ? "8va" : "8vb", {left, y}, kSize})};
    double x = inks.front().box.right + 0.3;
    for (; x + kDash < right; x += 2 * kDash) {
      inks.push_back(line_ink(InkKind::ottava, {x, line}, {x + kDash, line}, kThickness));
    }
    inks.push_back(line_ink(InkKind::ottava, {right, line},
                            {right, line + (above ? kHook : -kHook)}, kThickness));
    add(inks);
  }

  void add(const Inks& inks) {
    sky_.add(inks);
    append(inks_, inks);
  }

  const BarsInSystem& system_;
  const Line& line_;
  std::size_t hand_;
  bool alone_;
  OpenTies& ties_;
  OpenLoudness& loudness_;
  Slurs slurs_;
  Skyline sky_;
  Inks inks_;
};

}  // namespace

Inks draw_staff(const BarsInSystem& system, const Line& line, std::size_t hand, bool alone,
                OpenBows& open) {
  return StaffDrawing(system, line, hand, alone, open).draw();
}

}  // namespace fingerturn
