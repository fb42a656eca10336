#include "read/musicxml/place.hpp"

namespace fingerturn {

MusicalPlace musical_place(const WrittenPart& part, const WrittenNote& note, Hand hand) {
  MusicalPlace place = musical_place(part, part.measures[note.measure], note.tick);
  place.hand = hand;
  return place;
}

MusicalPlace musical_place(const WrittenPart& part, const WrittenMeasure& measure, Ticks tick) {
  const Ticks whole = 4 * part.ticks_per_quarter;
  MusicalPlace place;
  place.bar = measure.bar;
  place.beat = reduced(whole + (measure.bar_tick + tick) * measure.beat_type, whole);
  return place;
}

}  // namespace fingerturn
