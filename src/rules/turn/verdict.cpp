#include "rules/turn/verdict.hpp"

#include "rules/turn/crossing.hpp"
#include "rules/turn/first_note.hpp"
#include "rules/turn/kind.hpp"
#include "rules/turn/level.hpp"
#include "rules/turn/missing_finger.hpp"
#include "rules/turn/reason.hpp"
#include "rules/turn/same_finger.hpp"
#include "rules/turn/side.hpp"

/// From note to note the step, the side, the crossing, the kind.
namespace fingerturn {
namespace {

using Form = Reason::Form;

/// That a silent change turns the forearm, and that double notes go by their middle, is convention.
Basis basis_of(const Strike& from, const Strike& to) {
  const bool single_notes = from.is_single_note() && to.is_single_note();
  return single_notes && !from.last_change ? Basis::rule : Basis::convention;
}

Verdict judge_missing(const Strike& strike) {
  return {Rotation::undetermined, std::nullopt, kMissingFingerRule.id, Basis::none,
          reason_in(Form::finger_missing, strike)};
}

Form form_of(Level level) {
  switch (level) {
    case Level::outer_fingers:
      return Form::level_pair;
    case Level::octave:
      return Form::level_octave;
    case Level::repeated:
      return Form::level_repeated;
    case Level::chord:
    case Level::no:
      break;
  }
  return Form::level_chord;
}

Verdict judge_level(const Strike& strike) {
  return {Rotation::level, std::nullopt, kLevelRule.id, Basis::convention,
          reason_in(form_of(strike.level), strike)};
}

Verdict judge_unknown_step(const Strike& to) {
  if (!to.arrival.known()) return judge_missing(to);
  return {Rotation::undetermined, side_of_outer_finger(to), kAfterMissingRule.id, Basis::none,
          reason_in(Form::after_missing, to)};
}

Verdict judge_same_finger(std::optional<Side> before, const Strike& from, const Strike& to) {
  // The source speaks of one exertion repeated: the same finger must have struck before.
  const bool sourced =
      repeats_key(from, to) && from.arrival.lowest == to.arrival.lowest && !from.last_change;
  return {kind_of(FingerStep::same, before, before), before, kSameFingerRule.id,
          sourced ? Basis::rule : Basis::convention, reason_in(Form::same_finger, from, to)};
}

std::string_view rule_of_step(Rotation rotation, const Strike& from, const Strike& to) {
  if (!from.is_single_note() || !to.is_single_note()) return kDoubleNoteRule.id;
  if (from.last_change) return kSilentChangeRule.id;
  return rotation == Rotation::single_rotation ? kSideChangesRule.id : kSideStaysRule.id;
}

Verdict judge_step(Hand hand, std::optional<Side> before, FingerStep step, const Strike& from,
                   const Strike& to) {
  const std::optional<Side> side = side_of(step);
  const Rotation rotation = kind_of(step, before, side);
  const Reason reason = reason_in(Form::step, from, to);
  const Crossing crossing = crossing_between(hand, from, to);
  if (rotation == Rotation::undetermined) {
    return {rotation, side, kAfterMissingRule.id, Basis::none, reason, crossing};
  }
  return {rotation, side, rule_of_step(rotation, from, to), basis_of(from, to), reason, crossing};
}

}  // namespace

Verdict judge_first(std::span<const Strike> gesture) {
  const Strike& first = gesture.front();
  if (first.is_level()) return judge_level(first);
  if (!first.arrival.known()) return judge_missing(first);
  const FirstSide opening = first_side(gesture);
  const Strike& to = gesture[opening.step_to];
  if (opening.by_change) {
    return {Rotation::preparatory, opening.side, kFirstNoteRule.id, Basis::convention,
            reason_in(Form::first_change, to)};
  }
  if (!opening.by_step) {
    return {Rotation::preparatory, opening.side, kFirstNoteAloneRule.id, Basis::convention,
            reason_in(Form::first_alone, first)};
  }
  const Strike& from = gesture[opening.step_to - 1];
  return {Rotation::preparatory, opening.side, kFirstNoteRule.id,
          first.is_single_note() ? basis_of(from, to) : Basis::convention,
          reason_in(Form::first, from, to)};
}

Verdict judge_next(Hand hand, std::optional<Side> struck, const Strike& from, const Strike& to) {
  const FingerStep step = finger_step(from, to);
  const std::optional<Side> before = from.last_change ? from.last_change : struck;
  switch (step) {
    case FingerStep::unknown:
      return judge_unknown_step(to);
    case FingerStep::same:
      return judge_same_finger(before, from, to);
    case FingerStep::toward_fifth:
    case FingerStep::toward_thumb:
      break;
  }
  return judge_step(hand, before, step, from, to);
}

}  // namespace fingerturn
