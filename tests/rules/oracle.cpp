#include "rules/oracle.hpp"

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace fingerturn::oracle {
namespace {

/// A finger that is not written.
constexpr int kMissing = 0;

/// Section 1, "event": what the hand strikes at one moment.
struct Strike {
  std::size_t event = 0;
  std::vector<int> keys;                  ///< lowest first
  std::vector<std::vector<int>> moments;  ///< the fingers on the keys, anew after each change (2.7)
  bool level = false;                     ///< 2.4
};

bool only_holds(const Event& event) {
  return !event.is_rest() && std::all_of(event.notes.begin(), event.notes.end(),
                                         [](const Note& note) { return note.held; });
}

/// 2.7: what is written on the keys after one another: each list is of one key.
void add_moments(std::vector<std::vector<int>> written, Strike& strike) {
  for (std::size_t change = 0;; ++change) {
    std::vector<int> moment = strike.moments.back();
    bool any = false;
    for (std::size_t key = 0; key < written.size(); ++key) {
      if (change >= written[key].size()) continue;
      moment[key] = written[key][change];
      any = true;
    }
    if (!any) return;
    strike.moments.push_back(std::move(moment));
  }
}

std::vector<int> changes_of(const Note& note) {
  return {note.changes_to.begin(), note.changes_to.end()};
}

/// 2.7: the silent changes of a strike, and what is written on its tied continuations as long as
/// nothing else is struck.
void add_changes(const Line& line, Strike& strike) {
  std::vector<std::vector<int>> written;
  std::vector<bool> tied;
  for (const Note& note : line.events[strike.event].notes) {
    if (note.held) continue;
    written.push_back(changes_of(note));
    tied.push_back(note.tied);
  }
  add_moments(written, strike);
  for (std::size_t later = strike.event + 1; later < line.events.size(); ++later) {
    if (!only_holds(line.events[later])) return;
    written.assign(strike.keys.size(), {});
    for (const Note& held : line.events[later].notes) {
      for (std::size_t key = 0; key < strike.keys.size(); ++key) {
        if (!tied[key] || strike.keys[key] != midi_number(held.pitch)) continue;
        if (held.finger) {
          written[key] = changes_of(held);
          written[key].insert(written[key].begin(), *held.finger);
        }
        tied[key] = held.tied;
      }
    }
    add_moments(written, strike);
  }
}

bool finger_missing(const Strike& strike) {
  const std::vector<int>& striking = strike.moments.front();
  return std::count(striking.begin(), striking.end(), kMissing) > 0;
}

bool is_single_note(const Strike& strike) { return strike.keys.size() == 1; }

/// A rest, breath or skipped bar between two strikes that follow each other.
bool separated(const Line& line, const Strike& before, const Strike& after) {
  for (std::size_t event = before.event; event < after.event; ++event) {
    const Event& here = line.events[event];
    const Event& next = line.events[event + 1];
    if (here.is_rest() || here.breath_after || next.bar - here.bar > 1) return true;
  }
  return false;
}

/// 2.4, an event by itself.
bool is_level_alone(const Strike& strike) {
  if (strike.keys.size() != 2) return strike.keys.size() > 2;
  const std::vector<int>& striking = strike.moments.front();
  const bool outer = std::minmax(striking[0], striking[1]) == std::minmax(1, 5);
  return (outer && !finger_missing(strike)) || strike.keys[1] - strike.keys[0] >= 12;
}

/// 2.4: the same double note again, as far as its fingers are given.
bool come_again(const Line& line, const Strike& before, const Strike& after) {
  if (before.keys.size() != 2 || before.keys != after.keys) return false;
  for (std::size_t key = 0; key < 2; ++key) {
    const bool missing = before.moments.front()[key] == kMissing;
    const int left = missing ? kMissing : before.moments.back()[key];
    const int now = after.moments.front()[key];
    if (left != kMissing && now != kMissing && left != now) return false;
  }
  return !separated(line, before, after);
}

std::vector<Strike> strikes_of(const Line& line) {
  std::vector<Strike> strikes;
  strikes.reserve(line.events.size());
  for (std::size_t event = 0; event < line.events.size(); ++event) {
    Strike strike;
    strike.event = event;
    std::vector<int> striking;
    for (const Note& note : line.events[event].notes) {
      if (note.held) continue;
      strike.keys.push_back(midi_number(note.pitch));
      striking.push_back(note.finger.value_or(kMissing));
    }
    if (strike.keys.empty()) continue;
    strike.moments.push_back(std::move(striking));
    add_changes(line, strike);
    strike.level = is_level_alone(strike);
    if (!strikes.empty() && come_again(line, strikes.back(), strike)) {
      strikes.back().level = strike.level = true;
    }
    strikes.push_back(std::move(strike));
  }
  return strikes;
}

/// 2.5: twice the middle of the fingers, so that it stays a whole number.
int middle(const std::vector<int>& fingers) {
  return *std::min_element(fingers.begin(), fingers.end()) +
         *std::max_element(fingers.begin(), fingers.end());
}

std::optional<Side> side_of_way(int way) {
  if (way > 0) return Side::toward_fifth;
  if (way < 0) return Side::toward_thumb;
  return std::nullopt;
}

/// 2.7: the sides to which the silent changes turn, one after another.
std::vector<Side> sides_of_changes(const Strike& strike) {
  std::vector<Side> sides;
  if (finger_missing(strike)) return sides;
  for (std::size_t change = 1; change < strike.moments.size(); ++change) {
    const auto side =
        side_of_way(middle(strike.moments[change]) - middle(strike.moments[change - 1]));
    if (side) sides.push_back(*side);
  }
  return sides;
}

/// Section 1, "gesture": whether a gesture ends between two strikes that follow each other.
bool gesture_ends_between(const Line& line, const Strike& before, const Strike& after) {
  return before.level || after.level || separated(line, before, after) ||
         line.events[before.event].ornament != Ornament::none;
}

Side other(Side side) {
  return side == Side::toward_fifth ? Side::toward_thumb : Side::toward_fifth;
}

/// 2.1: the side of a step, none for the same finger again (2.6). Both fingers must be known.
std::optional<Side> side_of_step(const Strike& from, const Strike& to) {
  return side_of_way(middle(to.moments.front()) - middle(from.moments.back()));
}

/// The thumb plays toward the thumb and the fifth finger toward the fifth (2.3 and 2.8).
std::optional<Side> side_of_outer_finger(const Strike& strike) {
  if (!is_single_note(strike)) return std::nullopt;
  if (strike.moments[0][0] == 1) return Side::toward_thumb;
  if (strike.moments[0][0] == 5) return Side::toward_fifth;
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

  /// 2.3: looks ahead for a step with a side, a silent change or another, but not over a missing
  /// finger (2.8).
  [[nodiscard]] std::optional<Side> side_of_first(std::size_t first) const {
    for (std::size_t at = first; at < strikes.size(); ++at) {
      if (at > first) {
        if (opens_gesture(at) || finger_missing(strikes[at])) break;
        if (const auto side = side_of_step(strikes[at - 1], strikes[at])) return other(*side);
      }
      const std::vector<Side> changes = sides_of_changes(strikes[at]);
      if (!changes.empty()) return other(changes.front());
    }
    return side_of_outer_finger(strikes[first]);
  }

  void judge_rotation(std::size_t at, Verdict& verdict) const {
    const Strike& strike = strikes[at];
    if (strike.level) {
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
    const std::vector<Side> changes = sides_of_changes(strikes[at - 1]);
    const std::optional<Side> before =
        changes.empty() ? verdicts[at - 1].side : std::optional(changes.back());
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
    const int keys = to.keys[0] - from.keys[0];
    if (!step || keys == 0) return Crossing::none;
    const bool travels_toward_fifth = (keys > 0) == (line.hand == Hand::right);
    if (travels_toward_fifth == (*step == Side::toward_fifth)) return Crossing::none;
    const int leaves = from.moments.back()[0];
    const int arrives = to.moments[0][0];
    const bool thumb = leaves == 1 || arrives == 1;
    const bool fifth = leaves == 5 || arrives == 5;
    const int widest = !thumb ? 3 : fifth ? 4 : 5;
    if (std::abs(keys) > widest) return Crossing::none;
    if (arrives == 1) return Crossing::thumb_under;
    if (leaves == 1) return Crossing::finger_over_thumb;
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
    const std::vector<Side> changes = sides_of_changes(judgement.strikes[at]);
    if (!changes.empty()) verdict.change = changes.back();
    judgement.judge_swings(verdict);
    verdict.crossing = judgement.crossing_at(at);
    judgement.verdicts.push_back(verdict);
  }
  return judgement.verdicts;
}

}  // namespace fingerturn::oracle
