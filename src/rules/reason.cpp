#include "rules/reason.hpp"

#include "rules/same_finger.hpp"

#include <initializer_list>
#include <string_view>

namespace fingerturn {
namespace {

std::string name_of(const OuterFingers& fingers) {
  std::string name(1, static_cast<char>('0' + fingers.lowest));
  if (fingers.lowest != fingers.highest) {
    name += '-';
    name += static_cast<char>('0' + fingers.highest);
  }
  return name;
}

/// The parts in one text. Sentences are made by the million, so each is allocated once.
std::string joined(std::initializer_list<std::string_view> parts) {
  std::size_t length = 0;
  for (const std::string_view part : parts) length += part.size();
  std::string text;
  text.reserve(length);
  for (const std::string_view part : parts) text += part;
  return text;
}

std::string_view hand_word(Hand hand) { return hand == Hand::right ? "right" : "left"; }

std::string_view side_words(Side side) {
  return side == Side::toward_fifth ? "toward the fifth" : "toward the thumb";
}

std::string_view turn_word(const Decided& decided) {
  return fingerturn::name_of(direction_of(decided.hand, *decided.side));
}

/// "the thumb" or "the fifth finger", whichever strikes.
std::string_view outer_finger_words(const Strike& strike) {
  return strike.arrival.lowest == kThumb ? "the thumb" : "the fifth finger";
}

/// "3 to 1", or where the finger was changed "4 changed to 3 on the held key, and 3 to 1".
std::string step_words(const Strike& from, const Strike& to) {
  const std::string before = name_of(from.departure);
  const std::string struck_by = name_of(from.arrival);
  if (struck_by == before) return joined({before, " to ", name_of(to.arrival)});
  return joined({struck_by, " changed to ", before, " on the held key, and ", before, " to ",
                 name_of(to.arrival)});
}

std::string crossing_words(Crossing crossing, const Strike& to) {
  switch (crossing) {
    case Crossing::none:
      break;
    case Crossing::thumb_under:
      return ", the thumb passing under,";
    case Crossing::finger_over_thumb:
      return joined({", ", name_of(to.arrival), " passing over the thumb,"});
    case Crossing::finger_crossing:
      return ", the fingers crossing,";
  }
  return ",";
}

std::string_view middle_words(const Strike& from, const Strike& to) {
  return from.is_single_note() && to.is_single_note() ? "" : " by the middle of the fingers";
}

/// "the right forearm swings left first, then turns right".
std::string back_and_forth(const Decided& decided) {
  const Direction play = direction_of(decided.hand, *decided.side);
  return joined({"the ", hand_word(decided.hand), " forearm swings ",
                 fingerturn::name_of(opposite(play)), " first, then turns ",
                 fingerturn::name_of(play)});
}

std::string_view step_verdict(Rotation rotation) {
  switch (rotation) {
    case Rotation::single_rotation:
      return "the side changes: single.";
    case Rotation::double_rotation:
      return "the side stays, so the forearm swings back first: double.";
    case Rotation::preparatory:
    case Rotation::level:
    case Rotation::undetermined:
      break;
  }
  return "the side before is not known, so neither is the kind: undetermined.";
}

}  // namespace

std::string reason_level(const Strike& strike) {
  const std::string_view what =
      strike.note_count == 2 ? "1 and 5 together are" : "A chord of three or more notes is";
  return joined({what, " played level: both sides of the hand go down as one, without a turn."});
}

std::string reason_missing(const Strike& strike) {
  return strike.is_single_note() ? "The finger is missing: undetermined."
                                 : "A finger of the double note is missing: undetermined.";
}

std::string reason_first(const Decided& decided, const Strike& first, const Strike* from,
                         const Strike* to) {
  constexpr std::string_view kAlone = "First of its gesture, with no known step to follow: ";
  if (!decided.side) {
    return joined({kAlone, name_of(first.arrival), " has no side of its own: preparatory."});
  }
  if (to == nullptr) {
    return joined({kAlone, outer_finger_words(first), " plays ", side_words(*decided.side), ", so ",
                   back_and_forth(decided), ": preparatory."});
  }
  return joined({"First of its gesture: ", step_words(*from, *to), " will step ",
                 side_words(opposite(*decided.side)), middle_words(*from, *to), ", so ",
                 back_and_forth(decided), ": preparatory."});
}

std::string reason_after_missing(const Decided& decided, const Strike& strike) {
  if (!decided.side) return "The finger before is missing, so the step is not known: undetermined.";
  return joined({"The finger before is missing; ", outer_finger_words(strike), " plays ",
                 side_words(*decided.side), " all the same, so the ", hand_word(decided.hand),
                 " forearm turns ", turn_word(decided),
                 ", but the kind is not known: undetermined."});
}

std::string reason_same_finger(const Decided& decided, const Strike& from, const Strike& to) {
  const bool one_finger = from.is_single_note() && to.is_single_note();
  const std::string opening =
      one_finger ? joined({name_of(to.arrival), " again on ",
                           repeats_key(from, to) ? "the same key keeps the side"
                                                 : "another key, where the arm carries it, keeps "
                                                   "the side"})
                 : joined({step_words(from, to), " keeps the middle of the fingers and the side"});
  if (!decided.side) {
    return joined({opening, ", which is not known, and needs a swing of its own: double."});
  }
  return joined({opening, ": ", back_and_forth(decided), ": double."});
}

std::string reason_step(const Decided& decided, const Strike& from, const Strike& to) {
  return joined({step_words(from, to), " steps ", side_words(*decided.side), middle_words(from, to),
                 crossing_words(decided.crossing, to), " so the ", hand_word(decided.hand),
                 " forearm turns ", turn_word(decided), "; ", step_verdict(decided.rotation)});
}

}  // namespace fingerturn
