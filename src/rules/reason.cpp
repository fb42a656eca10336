#include "rules/reason.hpp"

#include <fmt/format.h>

#include <string_view>

#include "rules/same_finger.hpp"

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

std::string_view hand_word(Hand hand) { return hand == Hand::right ? "right" : "left"; }

std::string_view side_words(Side side) {
  return side == Side::toward_fifth ? "toward the fifth" : "toward the thumb";
}

/// "3 to 1", or where the finger was changed "4 changed to 3 on the held key, and 3 to 1".
std::string step_words(const Strike& from, const Strike& to) {
  const std::string before = name_of(from.departure);
  const std::string struck_by = name_of(from.arrival);
  std::string step = fmt::format("{} to {}", before, name_of(to.arrival));
  if (struck_by == before) return step;
  return fmt::format("{} changed to {} on the held key, and {}", struck_by, before, step);
}

std::string crossing_words(Crossing crossing, const Strike& to) {
  switch (crossing) {
    case Crossing::none:
      break;
    case Crossing::thumb_under:
      return ", the thumb passing under,";
    case Crossing::finger_over_thumb:
      return fmt::format(", {} passing over the thumb,", name_of(to.arrival));
    case Crossing::finger_crossing:
      return ", the fingers crossing,";
  }
  return {};
}

std::string_view middle_words(const Strike& from, const Strike& to) {
  return from.is_single_note() && to.is_single_note() ? "" : " by the middle of the fingers";
}

/// "the right forearm swings left first, then turns right".
std::string back_and_forth(Hand hand, Side side) {
  const Direction play = direction_of(hand, side);
  return fmt::format("the {} forearm swings {} first, then turns {}", hand_word(hand),
                     fingerturn::name_of(opposite(play)), fingerturn::name_of(play));
}

std::string_view step_verdict(Rotation rotation) {
  switch (rotation) {
    case Rotation::single_rotation:
      return "the side changes: single.";
    case Rotation::double_rotation:
      return "the side stays, so it swings back first: double.";
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
  return fmt::format("{} played level: both sides of the hand go down as one, without a turn.",
                     what);
}

std::string reason_missing(const Strike& strike) {
  return strike.is_single_note() ? "The finger is missing: undetermined."
                                 : "A finger of the double note is missing: undetermined.";
}

std::string reason_first(const Decided& decided, const Strike& first, const Strike* from,
                         const Strike* to) {
  if (!decided.side) {
    return fmt::format(
        "First of its gesture, with no known step to follow: {} has no side of its own: "
        "preparatory.",
        name_of(first.arrival));
  }
  const std::string turn = back_and_forth(decided.hand, *decided.side);
  if (to == nullptr) {
    const bool is_thumb = first.arrival.lowest == kThumb;
    return fmt::format(
        "First of its gesture, with no known step to follow: {} plays {}, so {}: preparatory.",
        is_thumb ? "the thumb" : "the fifth finger", side_words(*decided.side), turn);
  }
  return fmt::format("First of its gesture: {} will step {}{}, so {}: preparatory.",
                     step_words(*from, *to), side_words(opposite(*decided.side)),
                     middle_words(*from, *to), turn);
}

std::string reason_after_missing(const Decided& decided, const Strike& strike) {
  if (!decided.side) return "The finger before is missing, so the step is not known: undetermined.";
  const bool is_thumb = strike.arrival.lowest == kThumb;
  return fmt::format(
      "The finger before is missing; {} plays {} all the same, so the {} forearm turns {}, but the "
      "kind is not known: undetermined.",
      is_thumb ? "the thumb" : "the fifth finger", side_words(*decided.side),
      hand_word(decided.hand), fingerturn::name_of(direction_of(decided.hand, *decided.side)));
}

std::string reason_same_finger(const Decided& decided, const Strike& from, const Strike& to) {
  std::string opening;
  if (from.departure.lowest != to.arrival.lowest || !from.is_single_note()) {
    opening = fmt::format("{} keeps the middle of the fingers and the side",
                          step_words(from, to));
  } else {
    opening = fmt::format("{} again on {} keeps the side", name_of(to.arrival),
                          repeats_key(from, to) ? "the same key"
                                                : "another key, where the arm carries it,");
  }
  if (!decided.side) return opening + ", which is not known, and needs a swing of its own: double.";
  return fmt::format("{}: {}: double.", opening, back_and_forth(decided.hand, *decided.side));
}

std::string reason_step(const Decided& decided, const Strike& from, const Strike& to) {
  const Side side = *decided.side;
  const std::string crossing = crossing_words(decided.crossing, to);
  return fmt::format("{} steps {}{}{} so the {} forearm turns {}; {}", step_words(from, to),
                     side_words(side), middle_words(from, to), crossing.empty() ? "," : crossing,
                     hand_word(decided.hand),
                     fingerturn::name_of(direction_of(decided.hand, side)),
                     step_verdict(decided.rotation));
}

}  // namespace fingerturn
