#include "rules/oracle.hpp"

#include <algorithm>
#include <utility>

namespace fingerturn::oracle {
namespace {

/// A finger that is not written.
constexpr int kMissing = 0;

/// Section 1, "event": what the hand strikes at one moment.
struct Strike {
  std::size_t event = 0;
  std::vector<int> striking;  ///< the fingers that strike
  std::vector<int> staying;   ///< the fingers on the same keys when the hand plays on (2.7)
  int lowest_key = 0;
};

/// The finger that a tied continuation leaves on the key, where it has one written.
int finger_written_last(const Note& note) {
  if (!note.changes_to.empty()) return note.changes_to.back();
  return note.finger.value_or(kMissing);
}

bool only_holds(const Event& event) {
  return !event.is_rest() && std::all_of(event.notes.begin(), event.notes.end(),
                                         [](const Note& note) { return note.held; });
}

/// 2.7: the last finger on the key of a struck note. Fingers on its tied continuations count as
/// long as nothing else is struck.
int staying_finger(const Line& line, std::size_t event, const Note& struck) {
  int finger = finger_written_last(struck);
  bool tied = struck.tied;
  for (std::size_t later = event + 1; later < line.events.size(); ++later) {
    if (!tied || !only_holds(line.events[later])) break;
    for (const Note& held : line.events[later].notes) {
      if (midi_number(held.pitch) != midi_number(struck.pitch)) continue;
      if (finger_written_last(held) != kMissing) finger = finger_written_last(held);
      tied = held.tied;
    }
  }
  return finger;
}

std::vector<Strike> strikes_of(const Line& line) {
  std::vector<Strike> strikes;
  strikes.reserve(line.events.size());
  for (std::size_t event = 0; event < line.events.size(); ++event) {
    Strike strike;
    strike.event = event;
    for (const Note& note : line.events[event].notes) {
      if (note.held) continue;
      if (strike.striking.empty()) strike.lowest_key = midi_number(note.pitch);
      strike.striking.push_back(note.finger.value_or(kMissing));
      strike.staying.push_back(staying_finger(line, event, note));
    }
    if (!strike.striking.empty()) strikes.push_back(std::move(strike));
  }
  return strikes;
}

bool finger_missing(const Strike& strike) {
  return std::count(strike.striking.begin(), strike.striking.end(), kMissing) > 0;
}

bool is_single_note(const Strike& strike) { return strike.striking.size() == 1; }

int lowest(const std::vector<int>& fingers) {
  return *std::min_element(fingers.begin(), fingers.end());
}
int highest(const std::vector<int>& fingers) {
  return *std::max_element(fingers.begin(), fingers.end());
}

/// 2.4 and the last sentence of 2.8.
bool is_level(const Strike& strike) {
  if (strike.striking.size() >= 3) return true;
  return strike.striking.size() == 2 && lowest(strike.striking) == 1 &&
         highest(strike.striking) == 5;
}

/// 2.5: twice the middle, so that it stays a whole number.
int middle(const std::vector<int>& fingers) { return lowest(fingers) + highest(fingers); }

/// Section 1, "gesture": whether a gesture ends between two strikes that follow each other.
bool gesture_ends_between(const Line& line, const Strike& before, const Strike& after) {
  if (is_level(before) || is_level(after)) return true;
  for (std::size_t event = before.event; event < after.event; ++event) {
    const Event& here = line.events[event];
    const Event& next = line.events[event + 1];
    if (here.is_rest() || here.breath_after || next.bar - here.bar > 1) return true;
  }
  return false;
}

Side other(Side side) {
  return side == Side::toward_fifth ? Side::toward_thumb : Side::toward_fifth;
}

/// 2.1: the side of a step, none for the same finger again (2.6). Both fingers must be known.
std::optional<Side> side_of_step(const Strike& from, const Strike& to) {
  const int way = middle(to.striking) - middle(from.staying);
  if (way > 0) return Side::toward_fifth;
  if (way < 0) return Side::toward_thumb;
  return std::nullopt;
}

/// The thumb plays toward the thumb and the fifth finger toward the fifth (2.3 and 2.8).
std::optional<Side> side_of_outer_finger(const Strike& strike) {
  if (!is_single_note(strike)) return std::nullopt;
  if (strike.striking.front() == 1) return Side::toward_thumb;
  if (strike.striking.front() == 5) return Side::toward_fifth;
  return std::nullopt;
}

/// Everything about one line, filled in from its first strike to its last.
struct Judgement {
  const Line& line;
  std::vector<Strike> strikes;
  std::vector<Verdict> verdicts;

  [[nodiscard]] bool opens_gesture(std::size_t at) const {
    return at == 0 || gesture_ends_between(line, strikes[at - 1], strikes[at]);
  }

  /// 2.3: looks ahead for a step with a side, but not over a missing finger (2.8).
  [[nodiscard]] std::optional<Side> side_of_first(std::size_t first) const {
    for (std::size_t at = first + 1; at < strikes.size(); ++at) {
      if (opens_gesture(at) || finger_missing(strikes[at])) break;
      if (const auto side = side_of_step(strikes[at - 1], strikes[at])) return other(*side);
    }
    return side_of_outer_finger(strikes[first]);
  }

  void judge_rotation(std::size_t at, Verdict& verdict) const {
    const Strike& strike = strikes[at];
    if (is_level(strike)) {
      verdict.rotation = Rotation::level;
    } else if (finger_missing(strike)) {
      verdict.rotation = Rotation::undetermined;
    } else if (opens_gesture(at)) {
      verdict.rotation = Rotation::preparatory;
      verdict.side = side_of_first(at);
    } else if (finger_missing(strikes[at - 1])) {
      verdict.rotation = Rotation::undetermined;
      verdict.side = side_of_outer_finger(strike);
    } else {
      judge_step(at, verdict);
    }
  }

  /// 2.2 and 2.6, where the fingers of this strike and of the one before are known.
  void judge_step(std::size_t at, Verdict& verdict) const {
    const std::optional<Side> before = verdicts[at - 1].side;
    const std::optional<Side> step = side_of_step(strikes[at - 1], strikes[at]);
    verdict.side = step ? step : before;
    if (!step) {
      verdict.rotation = Rotation::double_rotation;
    } else if (!before) {
      verdict.rotation = Rotation::undetermined;
    } else {
      verdict.rotation = *step == *before ? Rotation::double_rotation : Rotation::single_rotation;
    }
  }

  /// 2.2: every swing out of the opposite side.
  void judge_swings(Verdict& verdict) const {
    switch (verdict.rotation) {
      case Rotation::preparatory:
      case Rotation::double_rotation:
        verdict.swings = 2;
        break;
      case Rotation::single_rotation:
        verdict.swings = 1;
        break;
      case Rotation::level:
        verdict.swings = 0;
        break;
      case Rotation::undetermined:
        break;
    }
    if (verdict.swings != 2 || !verdict.side) return;
    const bool right_hand = line.hand == Hand::right;
    const bool plays_right = (*verdict.side == Side::toward_fifth) == right_hand;
    verdict.prepare = plays_right ? Direction::left : Direction::right;
  }

  /// Section 3.
  [[nodiscard]] Crossing crossing_at(std::size_t at) const {
    if (opens_gesture(at)) return Crossing::none;
    const Strike& from = strikes[at - 1];
    const Strike& to = strikes[at];
    if (!is_single_note(from) || !is_single_note(to)) return Crossing::none;
    if (finger_missing(from) || finger_missing(to)) return Crossing::none;
    const std::optional<Side> step = side_of_step(from, to);
    if (!step || from.lowest_key == to.lowest_key) return Crossing::none;
    const bool rises = to.lowest_key > from.lowest_key;
    const bool travels_toward_fifth = rises == (line.hand == Hand::right);
    if (travels_toward_fifth == (*step == Side::toward_fifth)) return Crossing::none;
    if (to.striking.front() == 1) return Crossing::thumb_under;
    if (from.staying.front() == 1) return Crossing::finger_over_thumb;
    return Crossing::finger_crossing;
  }
};

}  // namespace

std::vector<Verdict> judge(const Line& line) {
  Judgement judgement{line, strikes_of(line), {}};
  judgement.verdicts.reserve(judgement.strikes.size());
  for (std::size_t at = 0; at < judgement.strikes.size(); ++at) {
    Verdict verdict;
    verdict.event = judgement.strikes[at].event;
    verdict.index = at;
    if (at > 0) {
      verdict.gesture = judgement.verdicts[at - 1].gesture + (judgement.opens_gesture(at) ? 1 : 0);
    }
    judgement.judge_rotation(at, verdict);
    judgement.judge_swings(verdict);
    verdict.crossing = judgement.crossing_at(at);
    judgement.verdicts.push_back(verdict);
  }
  return judgement.verdicts;
}

}  // namespace fingerturn::oracle
