#include "fingering/difficulty.hpp"

#include "fingering/tables.hpp"
#include "fingering/triads.hpp"
#include "hand/keyboard.hpp"

#include <algorithm>
#include <cstdlib>

/// Each function counts what docs/fingering.md says of its terms.
namespace fingerturn {
namespace {

constexpr Finger kThird = 3;
constexpr Finger kFourth = 4;
constexpr std::int32_t kMostBeyond = 8;        // semitones
constexpr std::int32_t kNearShift = 4 * kOne;  // white keys
constexpr std::int32_t kFurthestShift = 8 * kOne;

/// One key left and one struck, with their fingers.
struct KeyStep {
  const GripKey& from;
  Finger leaves;
  const GripKey& to;
  Finger strikes;

  [[nodiscard]] bool uses(Finger one, Finger other) const noexcept {
    return (leaves == one && strikes == other) || (leaves == other && strikes == one);
  }
  /// Semitones, above 0 where the higher finger is nearer to the fifth's side.
  [[nodiscard]] std::int32_t span() const noexcept {
    const std::int32_t travel = to.across - from.across;
    return strikes > leaves ? travel : -travel;
  }
};

std::int32_t beyond(std::int32_t span, std::int32_t least, std::int32_t widest) noexcept {
  return std::max(0, least - span) + std::max(0, span - widest);
}

void add_spans(const KeyStep& step, const SpanTable& spans, std::int32_t part,
               Tally& tally) noexcept {
  const FingerSpans& limits = spans.of(step.leaves, step.strikes);
  const std::int32_t span = step.span();
  const auto count = [&](Term term, std::int32_t semitones) {
    if (semitones > 0) tally.add(term, std::min(semitones, kMostBeyond) * part);
  };
  count(Term::stretch, beyond(span, limits.least_comfortable, limits.widest_comfortable));
  count(Term::small_span, limits.least_relaxed - span);
  count(Term::large_span, span - limits.widest_relaxed);
}

void add_third_and_fourth(const KeyStep& step, std::int32_t part, Tally& tally) noexcept {
  if (!step.uses(kThird, kFourth)) return;
  tally.add(Term::three_to_four, part);
  const bool third_leaves = step.leaves == kThird;
  const GripKey& third = third_leaves ? step.from : step.to;
  const GripKey& fourth = third_leaves ? step.to : step.from;
  if (!third.black && fourth.black) tally.add(Term::four_on_black, part);
}

void add_passing(const KeyStep& step, std::int32_t part, Tally& tally) noexcept {
  if (step.span() >= 0) return;
  if (step.leaves != kThumb && step.strikes != kThumb) {
    tally.add(Term::fingers_cross, part);
    return;
  }
  const bool thumb_leaves = step.leaves == kThumb;
  const GripKey& thumb = thumb_leaves ? step.from : step.to;
  const GripKey& other = thumb_leaves ? step.to : step.from;
  constexpr std::int32_t kOntoBlack = 3;
  tally.add(Term::thumb_passing, thumb.black && !other.black ? kOntoBlack * part : part);
}

void add_black_neighbours(const KeyStep& step, std::int32_t part, Tally& tally) noexcept {
  if (step.from.black == step.to.black) return;
  const Finger on_black = step.from.black ? step.leaves : step.strikes;
  if (on_black == kThumb) tally.add(Term::thumb_on_black, part * 3 / 4);
  if (on_black == kFifth) tally.add(Term::five_on_black, part);
}

void add_key_to_key(const KeyStep& step, const SpanTable& spans, std::int32_t part,
                    Tally& tally) noexcept {
  if (step.from.across == step.to.across) return;
  if (step.leaves == step.strikes) {
    tally.add(Term::same_finger, part);
    return;
  }
  if (tally.avoided().contains(step.leaves, step.strikes)) tally.add(Term::avoided_pair, part);
  add_spans(step, spans, part, tally);
  add_third_and_fourth(step, part, tally);
  add_passing(step, part, tally);
  add_black_neighbours(step, part, tally);
}

/// Calls `look` with each key of one grip and each struck key of another.
template <typename Look>
void for_each_step(Fingered from, Fingered to, const Look& look) noexcept {
  for (std::size_t i = 0; i < from.grip.count; ++i) {
    for (std::size_t j = 0; j < to.grip.count; ++j) {
      if (!to.grip.keys[j].struck) continue;
      look(
          KeyStep{from.grip.keys[i], from.choice.leaves[i], to.grip.keys[j], to.choice.strikes[j]});
    }
  }
}

std::uint32_t held_keys(const Grip& grip) noexcept {
  std::uint32_t held = 0;
  for (std::size_t i = 0; i < grip.count; ++i) {
    if (grip.keys[i].held_from >= 0) held |= 1U << static_cast<unsigned>(grip.keys[i].held_from);
  }
  return held;
}

void add_key_steps(Fingered from, Fingered to, const SpanTable& spans, Tally& tally) noexcept {
  const std::uint32_t held = held_keys(to.grip);
  std::int32_t left = 0;
  for (std::size_t i = 0; i < from.grip.count; ++i) left += (held >> i & 1U) == 0 ? 1 : 0;
  const std::int32_t most = std::max<std::int32_t>(left, to.grip.struck_count);
  for (std::size_t i = 0; i < from.grip.count; ++i) {
    if ((held >> i & 1U) != 0) continue;
    for (std::size_t j = 0; j < to.grip.count; ++j) {
      if (!to.grip.keys[j].struck) continue;
      add_key_to_key(
          {from.grip.keys[i], from.choice.leaves[i], to.grip.keys[j], to.choice.strikes[j]}, spans,
          kOne / most, tally);
    }
  }
}

void add_repeats(Fingered from, Fingered to, Tally& tally) noexcept {
  const bool quick = to.grip.quick && from.grip.count == 1 && to.grip.count == 1;
  for_each_step(from, to, [&](const KeyStep& step) {
    if (step.from.across != step.to.across) return;
    const bool same = step.leaves == step.strikes;
    if (quick && same) tally.add(Term::quick_repeat, kOne);
    if (!quick && !same) tally.add(Term::change_on_repeat, kOne);
  });
}

void add_changes_while_held(Fingered from, Fingered to, Tally& tally) noexcept {
  for (std::size_t i = 0; i < to.grip.count; ++i) {
    const GripKey& key = to.grip.keys[i];
    if (key.held_from < 0) continue;
    const auto place = static_cast<std::uint8_t>(key.held_from);
    if (from.choice.leaves[place] != to.choice.strikes[i]) tally.add(Term::change_while_held, kOne);
  }
}

std::int32_t shift_between(const Choice& from, const Choice& to) noexcept {
  return std::abs(to.place_struck - from.place_left);
}

void add_shift(std::int32_t shift, bool slow, Tally& tally) noexcept {
  constexpr std::int32_t kNoMove = kOne / 8;
  if (shift > kNoMove) tally.add(slow ? Term::slow_move : Term::quick_move, kOne);
  tally.add(slow ? Term::slow_shift : Term::quick_shift, std::min(shift, kNearShift));
  if (shift > kNearShift) tally.add(Term::far_shift, shift - kNearShift);
}

void add_habit(const GripKey& key, Finger finger, std::int32_t part, Tally& tally) noexcept {
  const auto differs = [finger](Finger usual) { return usual != 0 && finger != usual; };
  if (differs(key.habit)) {
    tally.add(key.in_whole_figure ? Term::off_handbook : Term::off_figure, kOne);
  }
  if (differs(key.printed)) tally.add(Term::off_printed, part);
  if (differs(key.again)) tally.add(key.again_on_key ? Term::off_repeat : Term::off_sequence, part);
}

void add_struck_fingers(Fingered at, Tally& tally) noexcept {
  const std::int32_t part = kOne / std::max<std::int32_t>(1, at.grip.struck_count);
  for (std::size_t i = 0; i < at.grip.count; ++i) {
    if (!at.grip.keys[i].struck) continue;
    const Finger finger = at.choice.strikes[i];
    if (finger >= kFourth) tally.add(Term::weak_finger, part);
    if (finger == kThird) tally.add(Term::third_finger, part);
    add_habit(at.grip.keys[i], finger, part, tally);
    if (!at.grip.keys[i].black) continue;
    if (finger == kThumb) tally.add(Term::thumb_on_black, part);
    if (finger == kFifth) tally.add(Term::five_on_black, part / 2);
  }
}

void add_usual_in_triad(Fingered at, Tally& tally) noexcept {
  const std::array<Finger, 3> usual = usual_triad_fingers(at.grip);
  if (usual[0] == 0) return;
  if (!std::equal(usual.begin(), usual.end(), at.choice.strikes.begin())) {
    tally.add(Term::off_triad, kOne);
  }
}

/// The table of fingers where chords are left or struck.
void add_chord_steps(Fingered from, Fingered to, Tally& tally) noexcept {
  const std::int32_t most = std::max(from.grip.count, to.grip.count);
  if (most == 1) return;
  for_each_step(from, to, [&](const KeyStep& step) {
    tally.add_entry(Term::finger_in_chords,
                    chord_entry({step.from, step.leaves, step.to, step.strikes}, to.grip.slow),
                    most);
  });
}

}  // namespace

void add_grip(Fingered at, const SpanTable& spans, Tally& tally) noexcept {
  add_struck_fingers(at, tally);
  add_usual_in_triad(at, tally);
  if (at.grip.opens && at.grip.count == 1 && at.grip.struck_count == 1) {
    tally.add_entry(Term::opening_finger, opening_entry(at.grip, at.choice.strikes[0]));
  }
  for (std::size_t i = 0; i < at.grip.count; ++i) {
    for (std::size_t j = i + 1; j < at.grip.count; ++j) {
      const GripKey& near = at.grip.keys[i];
      const GripKey& far = at.grip.keys[j];
      const Finger one = at.choice.strikes[i];
      const Finger other = at.choice.strikes[j];
      if (one == other || (!near.struck && !far.struck)) continue;
      const FingerSpans& limits = spans.of(one, other);
      const std::int32_t width = far.across - near.across;
      const std::int32_t span = other > one ? width : -width;
      tally.add(Term::chord_span, beyond(span, limits.least_relaxed, limits.widest_relaxed) * kOne);
      if (!spans.is_practical(one, other, width)) tally.add(Term::chord_beyond_practical, kOne);
    }
  }
}

void add_step(Fingered from, Fingered to, const SpanTable& spans, Tally& tally) noexcept {
  const std::int32_t shift = shift_between(from.choice, to.choice);
  if (to.grip.opens) {
    tally.add(Term::shift_over_rest, std::min(shift, kFurthestShift));
    return;
  }
  add_changes_while_held(from, to, tally);
  add_shift(shift, to.grip.slow, tally);
  add_repeats(from, to, tally);
  add_key_steps(from, to, spans, tally);
  add_chord_steps(from, to, tally);
}

void add_over_two(Fingered first, Fingered last, Tally& tally) noexcept {
  tally.add(Term::shift_over_two,
            std::min(shift_between(first.choice, last.choice), kFurthestShift));
  std::int32_t again = 0;
  for_each_step(first, last, [&](const KeyStep& step) {
    again += step.from.across != step.to.across && step.leaves == step.strikes ? 1 : 0;
  });
  if (again == 0) return;
  const std::int32_t most = std::max<std::int32_t>(first.grip.count, last.grip.count);
  tally.add(Term::finger_again, again * (kOne / most));
}

void add_three(Fingered first, Fingered middle, Fingered last, const SpanTable& spans,
               Tally& tally) noexcept {
  const KeyStep whole{first.grip.keys[0], first.choice.leaves[0], last.grip.keys[0],
                      last.choice.strikes[0]};
  tally.add_entry(Term::finger_over_two,
                  over_two_entry({whole.from, whole.leaves, whole.to, whole.strikes}));
  const Finger between = middle.choice.strikes[0];
  if (whole.leaves == whole.strikes) {
    if (whole.from.across != whole.to.across) tally.add(Term::position_change_count, kOne);
    return;
  }
  const FingerSpans& limits = spans.of(whole.leaves, whole.strikes);
  const std::int32_t span = whole.span();
  const std::int32_t excess = beyond(span, limits.least_comfortable, limits.widest_comfortable);
  if (excess > 0) {
    constexpr std::int32_t kMostExcess = 12;
    const std::int32_t middle_key = middle.grip.keys[0].across;
    const bool one_way = (whole.from.across < middle_key && middle_key < whole.to.across) ||
                         (whole.from.across > middle_key && middle_key > whole.to.across);
    const bool full = between == kThumb && one_way &&
                      beyond(span, limits.least_practical, limits.widest_practical) > 0;
    tally.add(Term::position_change_count, full ? 2 * kOne : kOne);
    tally.add(Term::position_change_size, std::min(excess, kMostExcess) * kOne);
  }
  const bool all_differ = whole.leaves != between && between != whole.strikes;
  if (all_differ && std::min({whole.leaves, between, whole.strikes}) >= kThird) {
    tally.add(Term::three_four_five, kOne);
  }
}

bool belong_together(const Grip& middle, const Grip& last) noexcept {
  return !middle.opens && !last.opens;
}

bool are_single(const Grip& first, const Grip& middle, const Grip& last) noexcept {
  return first.count == 1 && middle.count == 1 && last.count == 1;
}

}  // namespace fingerturn
