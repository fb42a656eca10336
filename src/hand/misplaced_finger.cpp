#include "hand/misplaced_finger.hpp"

#include "hand/spans.hpp"

#include <algorithm>
#include <cstdlib>
#include <utility>
#include <vector>

namespace fingerturn {
namespace {

using Fingers = std::vector<Finger>;

/// The struck notes, nearest to the thumb's side first.
std::vector<std::size_t> from_the_thumb(Hand hand, const Event& event) {
  std::vector<std::size_t> notes;
  for (std::size_t i = 0; i < event.notes.size(); ++i) {
    if (!event.notes[i].held) notes.push_back(i);
  }
  if (hand == Hand::left) std::ranges::reverse(notes);
  return notes;
}

std::optional<Finger> written_finger(const Note& note) noexcept {
  return note.suggested ? note.set_aside : note.finger;
}

/// All ways to take so many keys with fingers that rise from one to the next.
std::vector<Fingers> rising_fingers(std::size_t keys) {
  constexpr unsigned kAllFingers = 1U << kFifth;
  std::vector<Fingers> found;
  for (unsigned taken = 1; taken < kAllFingers; ++taken) {
    Fingers fingers;
    for (Finger finger = kThumb; finger <= kFifth; ++finger) {
      if ((taken >> (finger - 1U) & 1U) != 0) fingers.push_back(finger);
    }
    if (fingers.size() == keys) found.push_back(fingers);
    if (fingers.size() + 1 != keys || fingers.front() != kThumb) continue;
    fingers.insert(fingers.begin(), kThumb);  // on two neighbouring keys
    found.push_back(std::move(fingers));
  }
  return found;
}

/// Whether the hand can take a chord with one finger on one of its keys, and how.
class Chord {
 public:
  Chord(const Event& event, const std::vector<std::size_t>& notes, std::optional<int> reach)
      : reach_(reach), ways_(rising_fingers(notes.size())) {
    for (const std::size_t note : notes) keys_.push_back(midi_number(event.notes[note].pitch));
  }

  [[nodiscard]] bool can_be_taken(std::size_t at, Finger finger, bool comfortably) const {
    return std::ranges::any_of(ways_, [&](const Fingers& fingers) {
      return fingers[at] == finger && fits(fingers, comfortably);
    });
  }

 private:
  [[nodiscard]] bool fits(const Fingers& fingers, bool comfortably) const {
    for (std::size_t near = 0; near < fingers.size(); ++near) {
      for (std::size_t far = near + 1; far < fingers.size(); ++far) {
        if (!fits(fingers[near], fingers[far], std::abs(keys_[far] - keys_[near]), comfortably)) {
          return false;
        }
      }
    }
    return true;
  }

  [[nodiscard]] bool fits(Finger near, Finger far, int semitones, bool comfortably) const {
    if (near == far) return takes_both(near, semitones);
    const FingerSpans spans = spans_of(near, far, reach_);
    return comfortably
               ? semitones >= spans.least_comfortable && semitones <= spans.widest_comfortable
               : semitones >= spans.least_practical && semitones <= spans.widest_practical;
  }

  std::optional<int> reach_;
  std::vector<int> keys_;
  std::vector<Fingers> ways_;
};

/// The place of the only written finger among the notes.
std::optional<std::size_t> lone_finger(const Event& event, const std::vector<std::size_t>& notes) {
  std::optional<std::size_t> found;
  for (std::size_t at = 0; at < notes.size(); ++at) {
    if (!written_finger(event.notes[notes[at]])) continue;
    if (found) return std::nullopt;
    found = at;
  }
  return found;
}

}  // namespace

std::optional<MisplacedFinger> misplaced_finger(Hand hand, const Event& event,
                                                std::optional<int> reach_semitones) {
  constexpr std::size_t kMostKeys = kFifth + 1;
  // Most events are single notes, and every event is asked about.
  if (event.notes.size() < 2) return std::nullopt;
  const std::vector<std::size_t> notes = from_the_thumb(hand, event);
  if (notes.size() < 2 || notes.size() > kMostKeys) return std::nullopt;
  const std::optional<std::size_t> at = lone_finger(event, notes);
  if (!at) return std::nullopt;
  const Finger finger = *written_finger(event.notes[notes[*at]]);
  const Chord chord(event, notes, reach_semitones);
  if (chord.can_be_taken(*at, finger, false)) return std::nullopt;
  std::optional<MisplacedFinger> found;
  for (const std::size_t outer : {std::size_t{0}, notes.size() - 1}) {
    if (outer == *at || !chord.can_be_taken(outer, finger, true)) continue;
    if (found) return std::nullopt;  // either may be meant
    found = {finger, notes[*at], notes[outer]};
  }
  return found;
}

}  // namespace fingerturn
