#include "fingering/grips.hpp"

#include "fingering/choices.hpp"
#include "hand/keyboard.hpp"

#include <algorithm>
#include <cstdlib>
#include <limits>
#include <optional>

namespace fingerturn {
namespace {

constexpr double kInstant = 1e-6;  // whole notes: less than any two onsets differ
constexpr int kWidestHeld = 15;    // semitones: 1-5 at its widest (table of spans)

/// A key that is down, and for how long.
struct Down {
  GripKey key;
  double until = 0;   ///< whole notes from the beginning of the passage
  bool tied = false;  ///< until its continuation, whenever that comes
};

Down down_of(Hand hand, const Event& event, const Note& note) {
  const int midi = midi_number(note.pitch);
  const int side = hand == Hand::right ? 1 : -1;
  Down down;
  down.key.across = across(hand, midi);
  down.key.place = side * place_of_key(midi);
  down.key.black = is_black_key(midi);
  down.key.struck = !note.held;
  down.key.given = note.finger.value_or(0);
  if (note.finger && !note.changes_to.empty()) down.key.changed_to = note.changes_to.back();
  if (event.onset) {
    const Fraction value = note.lasts.value_or(event.duration.value_or(Fraction{}));
    down.until = to_double(*event.onset) + to_double(value);
  }
  down.tied = note.tied;
  return down;
}

bool stands_on(const std::vector<Down>& keys, std::int32_t where) noexcept {
  return std::any_of(keys.begin(), keys.end(),
                     [where](const Down& down) { return down.key.across == where; });
}

bool takes_note(const std::vector<Down>& keys) noexcept {
  return std::any_of(keys.begin(), keys.end(),
                     [](const Down& down) { return down.key.struck || down.key.given != 0; });
}

/// Whether there are fingers enough; `keys` stand in their order. Fingers that are given may do
/// what no rule foresees.
bool can_be_taken(const std::vector<Down>& keys) noexcept {
  if (keys.size() != kMostKeys) return keys.size() < kMostKeys;
  const bool any_given =
      std::any_of(keys.begin(), keys.end(), [](const Down& down) { return down.key.given != 0; });
  const bool thumb_takes_two = keys[0].key.struck == keys[1].key.struck &&
                               keys[1].key.across - keys[0].key.across <= kNeighbours;
  return any_given || thumb_takes_two;
}

Grip grip_of(const std::vector<Down>& keys) {
  Grip grip;
  for (const Down& down : keys) {
    grip.keys.at(grip.count++) = down.key;
    if (down.key.struck) ++grip.struck_count;
  }
  return grip;
}

/// Whether keys that only sound on leave too few fingers for what is struck.
bool are_crowded(const std::vector<Down>& keys, const SpanTable& spans) {
  std::vector<Down> struck;
  for (const Down& down : keys) {
    if (down.key.struck || down.key.given != 0) struck.push_back(down);
  }
  if (struck.size() < 2 || struck.size() == keys.size()) return false;
  return fewest_impractical_pairs(grip_of(keys), spans) >
         fewest_impractical_pairs(grip_of(struck), spans);
}

/// Makes grips of a line's events, one after another.
class GripMaker {
 public:
  GripMaker(Hand hand, const SpanTable& spans) : hand_(hand), spans_(spans) {}

  void add(const Event& event, std::size_t place) {
    if (event.is_rest()) {
      down_.clear();
      opens_ = true;
      return;
    }
    std::vector<Down> keys = keys_of(event);
    const bool is_grip = takes_note(keys);
    add_sounding(event, keys);
    std::sort(keys.begin(), keys.end(), [](const Down& left, const Down& right) {
      return left.key.across < right.key.across;
    });
    if (is_grip) let_go(keys);
    if (is_grip && can_be_taken(keys)) {
      add_grip(event, place, keys);
    } else if (is_grip) {
      opens_ = true;
    }
    down_ = std::move(keys);
  }

  /// What lies between the event and the one before it.
  void separate(bool ends_gesture) noexcept { opens_ |= ends_gesture; }
  std::vector<Grip> take() { return std::move(grips_); }

 private:
  std::vector<Down> keys_of(const Event& event) const {
    std::vector<Down> keys;
    for (std::size_t i = 0; i < event.notes.size(); ++i) {
      if (!doubles_key(event, i)) keys.push_back(down_of(hand_, event, event.notes[i]));
    }
    return keys;
  }

  void add_sounding(const Event& event, std::vector<Down>& keys) const {
    for (Down down : down_) {
      const bool sounds =
          down.tied || (event.onset && down.until > to_double(*event.onset) + kInstant);
      if (!sounds || stands_on(keys, down.key.across)) continue;
      down.key.struck = false;
      down.key.given = down.key.changed_to = 0;
      keys.push_back(down);
    }
  }

  /// `keys` stand in their order. Lets go of keys that only sound on and lie too far from the
  /// others.
  void let_go(std::vector<Down>& keys) const {
    while (!keys.empty()) {
      const std::int32_t width = keys.back().key.across - keys.front().key.across;
      const bool fits =
          keys.size() < kMostKeys && width <= kWidestHeld && !are_crowded(keys, spans_);
      if (fits) return;
      auto furthest = furthest_sounding(keys, false);
      // A finger that is written on a held key gives way to keys that need it.
      const bool too_many = keys.size() >= kMostKeys;
      if (furthest == keys.end() && too_many) furthest = furthest_sounding(keys, true);
      if (furthest == keys.end()) return;
      keys.erase(furthest);
    }
  }

  static std::vector<Down>::iterator furthest_sounding(std::vector<Down>& keys, bool given_too) {
    std::int64_t sum = 0;
    std::int64_t count = 0;
    for (const Down& down : keys) {
      if (!down.key.struck) continue;
      sum += down.key.across;
      ++count;
    }
    auto furthest = keys.end();
    std::int64_t distance = -1;
    for (auto down = keys.begin(); down != keys.end(); ++down) {
      if (down->key.struck || (down->key.given != 0 && !given_too)) continue;
      const std::int64_t here = std::abs(down->key.across * count - sum);
      if (here <= distance) continue;
      distance = here;
      furthest = down;
    }
    return furthest;
  }

  void add_grip(const Event& event, std::size_t place, const std::vector<Down>& keys) {
    Grip grip = grip_of(keys);
    grip.event = place;
    grip.opens = opens_ || grips_.empty();
    for (std::size_t i = 0; i < grip.count && !grip.opens; ++i) {
      GripKey& key = grip.keys[i];
      if (!key.struck) key.held_from = place_before(key.across);
    }
    set_pace(event, grip);
    if (!grip.opens) set_onward(grips_.back(), grip);
    grips_.push_back(grip);
    opens_ = false;
    onset_ = event.onset;
  }

  [[nodiscard]] std::int8_t place_before(std::int32_t where) const noexcept {
    const Grip& before = grips_.back();
    for (std::uint8_t i = 0; i < before.count; ++i) {
      if (before.keys.at(i).across == where) return static_cast<std::int8_t>(i);
    }
    return -1;
  }

  static void set_onward(Grip& before, const Grip& grip) noexcept {
    const std::int32_t travel = grip.keys[0].across - before.keys[0].across;
    before.onward = Onward::stays;
    if (travel != 0) before.onward = travel < 0 ? Onward::toward_thumb : Onward::toward_fifth;
  }

  void set_pace(const Event& event, Grip& grip) const {
    constexpr double kSlow = 0.25;    // a quarter note
    constexpr double kQuick = 0.125;  // an eighth
    constexpr double kLeastQuarters = 0.125;
    constexpr double kMostQuarters = 2;
    if (grips_.empty()) grip.quarters_since = kMostQuarters;
    if (!event.onset || !onset_) return;
    const double since = to_double(*event.onset) - to_double(*onset_);
    grip.slow = since > kSlow - kInstant;
    grip.quarters_since = std::clamp(4 * since, kLeastQuarters, kMostQuarters);
    grip.quick = since > kInstant && since < kQuick + kInstant;
  }

  Hand hand_;
  const SpanTable& spans_;
  std::vector<Down> down_;
  std::vector<Grip> grips_;
  std::optional<Fraction> onset_;  ///< of the last grip
  bool opens_ = true;
};

}  // namespace

std::int32_t across(Hand hand, int midi) noexcept { return hand == Hand::right ? midi : -midi; }

bool doubles_key(const Event& event, std::size_t note) noexcept {
  return note > 0 &&
         midi_number(event.notes[note - 1].pitch) == midi_number(event.notes[note].pitch);
}

std::vector<Grip> grips_of(const Line& line, const SpanTable& spans) {
  GripMaker maker(line.hand, spans);
  for (std::size_t at = 0; at < line.events.size(); ++at) {
    if (at > 0) maker.separate(ends_gesture(line.events[at - 1], line.events[at]));
    maker.add(line.events[at], at);
  }
  return maker.take();
}

}  // namespace fingerturn
