#include "rules/turn/reason.hpp"

#include "rules/turn/same_finger.hpp"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <string>
#include <string_view>

/// The one sentence a player reads about an event. Every word of it is chosen here.
namespace fingerturn {
namespace {

/// A few letters, such as the fingers of a step; the longest has 82.
class Letters {
 public:
  Letters& add(std::string_view letters) {
    std::copy(letters.begin(), letters.end(), letters_.data() + used_);
    used_ += letters.size();
    return *this;
  }
  Letters& add(const OuterFingers& fingers) {
    add(fingers.lowest);
    if (fingers.lowest == fingers.highest) return *this;
    letters_[used_++] = '-';
    return add(fingers.highest);
  }
  [[nodiscard]] std::string_view text() const { return {letters_.data(), used_}; }

 private:
  Letters& add(Finger finger) {
    letters_[used_++] = static_cast<char>('0' + finger);
    return *this;
  }

  std::array<char, 96> letters_{};
  std::size_t used_ = 0;
};

/// An event and the hand that plays it.
struct Told {
  const EventAnalysis& event;
  Hand hand;

  [[nodiscard]] const Reason& reason() const { return event.reason; }
  [[nodiscard]] bool plays_right() const {
    return direction_of(hand, *event.side) == Direction::right;
  }
  [[nodiscard]] bool toward_fifth() const { return event.side == Side::toward_fifth; }
};

void add(std::string& out, std::initializer_list<std::string_view> parts) {
  for (const std::string_view part : parts) out += part;
}

/// "toward the fifth", as it ends a sentence or goes on.
std::string_view toward(Side side) {
  return side == Side::toward_fifth ? "toward the fifth" : "toward the thumb";
}

/// "3 to 1", or where the finger was changed "4 changed to 3 on the held key, which turns toward
/// the thumb, and 3 to 1".
Letters step_words(const Reason& reason) {
  Letters words;
  const bool is_back = reason.changed && reason.struck_by == reason.before;
  if (is_back) {
    words.add(reason.struck_by).add(" changed and back on the held key");
    words.add(", which ends ").add(toward(*reason.changed)).add(", and ");
  } else if (reason.struck_by != reason.before) {
    words.add(reason.struck_by).add(" changed to ").add(reason.before);
    words.add(" on the held key");
    if (reason.changed) words.add(", which turns ").add(toward(*reason.changed)).add(",");
    words.add(" and ");
  }
  return words.add(reason.before).add(" to ").add(reason.now);
}

/// Says it of the thumb or the fifth finger, whichever strikes.
std::string_view outer_finger_plays(const Told& told) {
  const bool thumb = told.reason().now.lowest == kThumb;
  if (told.toward_fifth()) {
    return thumb ? "the thumb plays toward the fifth" : "the fifth finger plays toward the fifth";
  }
  return thumb ? "the thumb plays toward the thumb" : "the fifth finger plays toward the thumb";
}

Letters crossing_words(const Told& told) {
  Letters words;
  switch (told.event.crossing) {
    case Crossing::none:
      break;
    case Crossing::thumb_under:
      return words.add(", the thumb passing under,");
    case Crossing::finger_over_thumb:
      return words.add(", ").add(told.reason().now).add(" passing over the thumb,");
    case Crossing::finger_crossing:
      return words.add(", the fingers crossing,");
  }
  return words.add(",");
}

std::string_view middle_words(const Reason& reason) {
  return reason.single_notes ? "" : " by the middle of the fingers";
}

std::string_view turn_words(const Told& told) {
  if (told.hand == Hand::right) {
    return told.plays_right() ? " so the right forearm turns right"
                              : " so the right forearm turns left";
  }
  return told.plays_right() ? " so the left forearm turns right"
                            : " so the left forearm turns left";
}

std::string_view back_and_forth(const Told& told) {
  if (told.hand == Hand::right) {
    return told.plays_right() ? "the right forearm swings left first, then turns right"
                              : "the right forearm swings right first, then turns left";
  }
  return told.plays_right() ? "the left forearm swings left first, then turns right"
                            : "the left forearm swings right first, then turns left";
}

std::string_view step_verdict(Rotation rotation) {
  switch (rotation) {
    case Rotation::single_rotation:
      return "; the side changes: single.";
    case Rotation::double_rotation:
      return "; the side stays, so the forearm swings back first: double.";
    case Rotation::preparatory:
    case Rotation::level:
    case Rotation::undetermined:
      break;
  }
  return "; the side before is not known, so neither is the kind: undetermined.";
}

void add_level(std::string& out, std::string_view what) {
  add(out, {what, " played level: both sides of the hand go down as one, without a turn."});
}

void add_missing(std::string& out, const Reason& reason) {
  out += reason.single_notes ? "The finger is missing: undetermined."
                             : "A finger of the double note is missing: undetermined.";
}

void add_first_alone(std::string& out, const Told& told) {
  constexpr std::string_view kAlone = "First of its gesture, with no known step to follow: ";
  if (!told.event.side) {
    const Letters finger = Letters().add(told.reason().now);
    add(out, {kAlone, finger.text(), " has no side of its own: preparatory."});
    return;
  }
  add(out, {kAlone, outer_finger_plays(told), ", so ", back_and_forth(told), ": preparatory."});
}

void add_first(std::string& out, const Told& told) {
  const Letters step = step_words(told.reason());
  add(out, {"First of its gesture: ", step.text(),
            told.toward_fifth() ? " will step toward the thumb" : " will step toward the fifth",
            middle_words(told.reason()), ", so ", back_and_forth(told), ": preparatory."});
}

void add_first_change(std::string& out, const Told& told) {
  const Reason& reason = told.reason();
  const Side change = told.toward_fifth() ? Side::toward_thumb : Side::toward_fifth;
  add(out, {"First of its gesture: ", Letters().add(reason.now).text(),
            " will change fingers on the held key ", toward(change), ", so ", back_and_forth(told),
            ": preparatory."});
}

void add_after_missing(std::string& out, const Told& told) {
  if (!told.event.side) {
    out += "The finger before is missing, so the step is not known: undetermined.";
    return;
  }
  add(out, {"The finger before is missing; ", outer_finger_plays(told), " all the same,",
            turn_words(told), ", but the kind is not known: undetermined."});
}

void add_same_finger(std::string& out, const Told& told) {
  const Reason& reason = told.reason();
  if (!reason.single_notes) {
    add(out, {step_words(reason).text(), " keeps the middle of the fingers and the side"});
  } else {
    add(out, {Letters().add(reason.now).text(),
              reason.same_key ? " again on the same key keeps the side"
                              : " again on another key, where the arm carries it, keeps the side"});
  }
  if (!told.event.side) {
    out += ", which is not known, and needs a swing of its own: double.";
  } else {
    add(out, {": ", back_and_forth(told), ": double."});
  }
}

void add_step(std::string& out, const Told& told) {
  const Letters step = step_words(told.reason());
  const Letters crossing = crossing_words(told);
  add(out,
      {step.text(), told.toward_fifth() ? " steps toward the fifth" : " steps toward the thumb",
       middle_words(told.reason()), crossing.text(), turn_words(told),
       step_verdict(told.event.rotation)});
}

void add_verdict(std::string& out, const Told& told) {
  const EventAnalysis& entry = told.event;
  switch (entry.reason.form) {
    case Reason::Form::level_pair:
      return add_level(out, "1 and 5 together are");
    case Reason::Form::level_octave:
      return add_level(out, "Two notes an octave or more apart are");
    case Reason::Form::level_repeated:
      return add_level(out, "A double note that is struck again and again is");
    case Reason::Form::level_chord:
      return add_level(out, "A chord of three or more notes is");
    case Reason::Form::first_alone:
      return add_first_alone(out, told);
    case Reason::Form::first:
      return add_first(out, told);
    case Reason::Form::first_change:
      return add_first_change(out, told);
    case Reason::Form::after_missing:
      return add_after_missing(out, told);
    case Reason::Form::same_finger:
      return add_same_finger(out, told);
    case Reason::Form::step:
      return add_step(out, told);
    case Reason::Form::finger_missing:
      break;
  }
  add_missing(out, entry.reason);
}

}  // namespace

Reason reason_in(Reason::Form form, const Strike& strike) noexcept {
  return {form, strike.is_single_note(), false, {}, {}, strike.arrival, {}};
}

Reason reason_in(Reason::Form form, const Strike& from, const Strike& to) noexcept {
  return {form,
          from.is_single_note() && to.is_single_note(),
          repeats_key(from, to),
          from.arrival,
          from.departure,
          to.arrival,
          from.last_change};
}

void add_reason(std::string& out, const EventAnalysis& entry, Hand hand) {
  if (entry.reason.after_ornament) {
    out += "A trill or tremolo before it may end on either side, so a gesture opens. ";
  }
  add_verdict(out, {entry, hand});
  if (entry.reason.goes_on) out += " After the stroke the sides alternate, singles throughout.";
}

std::string reason_of(const EventAnalysis& entry, Hand hand) {
  std::string reason;
  add_reason(reason, entry, hand);
  return reason;
}

}  // namespace fingerturn
