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

Basis basis_of(const Strike& from, const Strike& to) {
  return from.is_single_note() && to.is_single_note() ? Basis::rule : Basis::convention;
}

Verdict judge_missing(const Strike& strike) {
  return {Rotation::undetermined, std::nullopt, kMissingFingerRule.id, Basis::none,
          reason_in(Form::finger_missing, strike)};
}

Verdict judge_level(const Strike& strike) {
  const Form form = strike.note_count == 2 ? Form::level_pair : Form::level_chord;
  return {Rotation::level, std::nullopt, kLevelRule.id, Basis::convention, reason_in(form, strike)};
}

Verdict judge_unknown_step(const Strike& to) {
  if (!to.arrival.known()) return judge_missing(to);
  return {Rotation::undetermined, side_of_outer_finger(to), kAfterMissingRule.id, Basis::none,
          reason_in(Form::after_missing, to)};
}

Verdict judge_same_finger(std::optional<Side> before, const Strike& from, const Strike& to) {
  // The source speaks of one exertion repeated: the same finger must have struck before.
  const bool sourced = repeats_key(from, to) && from.arrival.lowest == to.arrival.lowest;
  return {kind_of(FingerStep::same, before, before), before, kSameFingerRule.id,
          sourced ? Basis::rule : Basis::convention, reason_in(Form::same_finger, from, to)};
}

std::string_view rule_of_step(Rotation rotation, Basis basis) {
  if (basis == Basis::convention) return kDoubleNoteRule.id;
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
  const Basis basis = basis_of(from, to);
  return {rotation, side, rule_of_step(rotation, basis), basis, reason, crossing};
}

}  // namespace

Verdict judge_first(std::span<const Strike> gesture) {
  const Strike& first = gesture.front();
  if (is_level(first)) return judge_level(first);
  if (!first.arrival.known()) return judge_missing(first);
  const FirstSide opening = first_side(gesture);
  if (opening.step_to == 0) {
    return {Rotation::preparatory, opening.side, kFirstNoteAloneRule.id, Basis::convention,
            reason_in(Form::first_alone, first)};
  }
  const Strike& from = gesture[opening.step_to - 1];
  const Strike& to = gesture[opening.step_to];
  return {Rotation::preparatory, opening.side, kFirstNoteRule.id,
          first.is_single_note() ? basis_of(from, to) : Basis::convention,
          reason_in(Form::first, from, to)};
}

Verdict judge_next(Hand hand, std::optional<Side> before, const Strike& from, const Strike& to) {
  const FingerStep step = finger_step(from, to);
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
