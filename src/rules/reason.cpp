#include "rules/reason.hpp"

#include "rules/same_finger.hpp"

#include <algorithm>
#include <initializer_list>
#include <string>
#include <string_view>

/// The one sentence a player reads about an event. Every word of it is chosen here.
namespace fingerturn {
namespace {

/// An event and the hand that plays it.
struct Told {
  const EventAnalysis& event;
  Hand hand;

  [[nodiscard]] const Reason& reason() const { return event.reason; }
  [[nodiscard]] Direction play() const { return direction_of(hand, *event.side); }
};

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
  std::string text(length, ' ');
  char* end = text.data();
  for (const std::string_view part : parts) end = std::copy(part.begin(), part.end(), end);
  return text;
}

std::string_view hand_word(Hand hand) { return hand == Hand::right ? "right" : "left"; }

std::string_view side_words(Side side) {
  return side == Side::toward_fifth ? "toward the fifth" : "toward the thumb";
}

std::string_view turn_word(const Told& told) { return fingerturn::name_of(told.play()); }

/// "the thumb" or "the fifth finger", whichever strikes.
std::string_view outer_finger_words(const OuterFingers& fingers) {
  return fingers.lowest == kThumb ? "the thumb" : "the fifth finger";
}

/// "3 to 1", or where the finger was changed "4 changed to 3 on the held key, and 3 to 1".
std::string step_words(const Reason& reason) {
  const std::string before = name_of(reason.before);
  const std::string now = name_of(reason.now);
  if (reason.struck_by == reason.before) return joined({before, " to ", now});
  return joined({name_of(reason.struck_by), " changed to ", before, " on the held key, and ",
                 before, " to ", now});
}

std::string crossing_words(Crossing crossing, const OuterFingers& now) {
  switch (crossing) {
    case Crossing::none:
      break;
    case Crossing::thumb_under:
      return ", the thumb passing under,";
    case Crossing::finger_over_thumb:
      return joined({", ", name_of(now), " passing over the thumb,"});
    case Crossing::finger_crossing:
      return ", the fingers crossing,";
  }
  return ",";
}

std::string_view middle_words(const Reason& reason) {
  return reason.single_notes ? "" : " by the middle of the fingers";
}

/// "the right forearm swings left first, then turns right".
std::string back_and_forth(const Told& told) {
  return joined({"the ", hand_word(told.hand), " forearm swings ",
                 fingerturn::name_of(opposite(told.play())), " first, then turns ",
                 turn_word(told)});
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

std::string level(std::string_view what) {
  return joined({what, " played level: both sides of the hand go down as one, without a turn."});
}

std::string finger_missing(const Reason& reason) {
  return reason.single_notes ? "The finger is missing: undetermined."
                             : "A finger of the double note is missing: undetermined.";
}

std::string first_alone(const Told& told) {
  constexpr std::string_view kAlone = "First of its gesture, with no known step to follow: ";
  const OuterFingers& fingers = told.reason().now;
  if (!told.event.side) {
    return joined({kAlone, name_of(fingers), " has no side of its own: preparatory."});
  }
  return joined({kAlone, outer_finger_words(fingers), " plays ", side_words(*told.event.side),
                 ", so ", back_and_forth(told), ": preparatory."});
}

std::string first(const Told& told) {
  return joined({"First of its gesture: ", step_words(told.reason()), " will step ",
                 side_words(opposite(*told.event.side)), middle_words(told.reason()), ", so ",
                 back_and_forth(told), ": preparatory."});
}

std::string after_missing(const Told& told) {
  if (!told.event.side) {
    return "The finger before is missing, so the step is not known: undetermined.";
  }
  return joined({"The finger before is missing; ", outer_finger_words(told.reason().now), " plays ",
                 side_words(*told.event.side), " all the same, so the ", hand_word(told.hand),
                 " forearm turns ", turn_word(told), ", but the kind is not known: undetermined."});
}

/// "3 again on the same key keeps the side".
std::string same_finger_words(const Reason& reason) {
  if (!reason.single_notes) {
    return joined({step_words(reason), " keeps the middle of the fingers and the side"});
  }
  return joined({name_of(reason.now), " again on ",
                 reason.same_key ? "the same key keeps the side"
                                 : "another key, where the arm carries it, keeps the side"});
}

std::string same_finger(const Told& told) {
  const std::string opening = same_finger_words(told.reason());
  if (!told.event.side) {
    return joined({opening, ", which is not known, and needs a swing of its own: double."});
  }
  return joined({opening, ": ", back_and_forth(told), ": double."});
}

std::string step(const Told& told) {
  const Reason& reason = told.reason();
  return joined({step_words(reason), " steps ", side_words(*told.event.side), middle_words(reason),
                 crossing_words(told.event.crossing, reason.now), " so the ", hand_word(told.hand),
                 " forearm turns ", turn_word(told), "; ", step_verdict(told.event.rotation)});
}

}  // namespace

Reason reason_in(Reason::Form form, const Strike& strike) noexcept {
  return {form, strike.is_single_note(), false, {}, {}, strike.arrival};
}

Reason reason_in(Reason::Form form, const Strike& from, const Strike& to) noexcept {
  return {form,
          from.is_single_note() && to.is_single_note(),
          repeats_key(from, to),
          from.arrival,
          from.departure,
          to.arrival};
}

std::string reason_of(const EventAnalysis& entry, Hand hand) {
  const Told told{entry, hand};
  switch (entry.reason.form) {
    case Reason::Form::level_pair:
      return level("1 and 5 together are");
    case Reason::Form::level_chord:
      return level("A chord of three or more notes is");
    case Reason::Form::first_alone:
      return first_alone(told);
    case Reason::Form::first:
      return first(told);
    case Reason::Form::after_missing:
      return after_missing(told);
    case Reason::Form::same_finger:
      return same_finger(told);
    case Reason::Form::step:
      return step(told);
    case Reason::Form::finger_missing:
      break;
  }
  return finger_missing(entry.reason);
}

}  // namespace fingerturn
