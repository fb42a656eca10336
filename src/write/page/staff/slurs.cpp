#include "write/page/staff/slurs.hpp"

#include <algorithm>
#include <cmath>

namespace fingerturn {
namespace {

constexpr double kSlurAir = 0.4;

/// How far from the straight line between its ends a slur bends, so that it clears what lies
/// between; `edge` gives how far that reaches at a place, above 0 beyond the line.
template <typename Edge>
double needed_bend(double width, const Edge& edge) {
  constexpr double kStep = 0.5;
  constexpr double kNearEnd = 0.12;
  double bend = std::min(2.0, 0.55 + 0.04 * width);
  for (double x = kStep; x < width; x += kStep) {
    const double way = x / width;
    if (way < kNearEnd || way > 1 - kNearEnd) continue;
    bend = std::max(bend, (edge(x) + kSlurAir) / (4 * way * (1 - way)));
  }
  return bend;
}

}  // namespace

Slurs::Slurs(OpenSlurs& open, double first) : open_(open), first_(first) {
  for (std::vector<SlurFrom>& voice : open_.voices) {
    for (SlurFrom& slur : voice) slur = {first_, false, slur.stems_up, slur.chords};
  }
}

void Slurs::begin_bar(std::int32_t bar) {
  if (bar > open_.bar + 1) {
    for (std::vector<SlurFrom>& voice : open_.voices) voice.clear();
  }
  open_.bar = bar;
}

Slurs::Span Slurs::span_of(const SlurFrom& slur, std::size_t voice, double to, bool ends) const {
  const bool all_up = slur.chords > 0 && slur.stems_up == slur.chords;
  const bool above = two_voices_ ? voice == 0 : !all_up;
  return {slur.x, to, slur.is_begin, ends, above};
}

void Slurs::end_one(std::size_t voice, double x) {
  std::vector<SlurFrom>& open = open_.voices.at(voice);
  if (open.empty()) return;
  spans_.push_back(span_of(open.back(), voice, x, true));
  open.pop_back();
}

void Slurs::add(const Line& line, const StaffChord& chord, double x, bool two_voices) {
  constexpr std::size_t kMostOpen = 8;
  if (chord.chord->is_rest()) return;
  two_voices_ |= two_voices;
  const double middle = x + kHeadWidth * chord.scale() / 2;
  std::vector<SlurFrom>& open = open_.voices.at(chord.voice);
  for (SlurFrom& slur : open) {
    ++slur.chords;
    slur.stems_up += chord.stem_up ? 1 : 0;
  }
  std::size_t begins = 0;
  for (const NotatedHead& head : chord.chord->heads) {
    const Note& note = line.events[head.place.event].notes[head.place.note];
    if (head.tied_to && !note.held) continue;  // a value that is written in several
    for (std::uint8_t i = 0; i < note.slurs_end; ++i) end_one(chord.voice, middle);
    begins += note.slurs_begin;
  }
  for (; begins > 0 && open.size() < kMostOpen; --begins) {
    open.push_back({middle, true, chord.stem_up ? 1U : 0U, 1});
  }
}

Inks Slurs::draw(double end, Skyline& sky) {
  constexpr double kMostBend = 4.5;
  constexpr double kAtEnd = 0.5;
  constexpr double kShortest = 1;
  for (std::size_t voice = 0; voice < open_.voices.size(); ++voice) {
    for (const SlurFrom& slur : open_.voices.at(voice)) {
      if (slur.chords > 0) spans_.push_back(span_of(slur, voice, end, false));
    }
  }
  // The short ones lie nearer to the notes.
  std::ranges::stable_sort(spans_, {}, [](const Span& span) { return span.to - span.from; });
  Inks inks;
  for (const Span& span : spans_) {
    const double width = std::max(span.to - span.from, kShortest);
    const double sign = span.above ? -1 : 1;
    const auto edge_at = [&](double left, double right) {
      return span.above ? sky.top(left, right, kMiddleLine) : sky.bottom(left, right, kMiddleLine);
    };
    Point from{span.from, edge_at(span.from - kAtEnd, span.from + kAtEnd) + sign * kSlurAir};
    Point to{span.from + width, edge_at(span.to - kAtEnd, span.to + kAtEnd) + sign * kSlurAir};
    if (!span.begins) from.y = to.y;
    if (!span.ends) to.y = from.y;
    const auto beyond = [&](double x) {
      const double line = from.y + (to.y - from.y) * x / width;
      return sign * (edge_at(from.x + x, from.x + x) - line);
    };
    const double needed = needed_bend(width, beyond);
    const double rise = std::max(0.0, needed - kMostBend);
    from.y += sign * rise;
    to.y += sign * rise;
    inks.push_back(bow_ink(InkKind::slur, from, to, sign * std::min(needed, kMostBend)));
    sky.add(inks.back());
  }
  spans_.clear();
  return inks;
}

}  // namespace fingerturn
