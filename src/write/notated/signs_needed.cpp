#include "write/notated/signs_needed.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <vector>

namespace fingerturn {
namespace {

constexpr std::size_t kSteps = 7;
constexpr std::size_t kAlters = 5;

/// How often each letter stands with each alteration.
class Letters {
 public:
  explicit Letters(const Passage& passage) {
    for (const Line& line : passage.lines) {
      for (const Event& event : line.events) {
        for (const Note& note : event.notes) add(note);
      }
    }
  }

  [[nodiscard]] std::size_t signs_in(KeySignature key) const {
    std::size_t signs = 0;
    for (std::size_t step = 0; step < kSteps; ++step) {
      const std::size_t alter = place_of(alter_in_key(key, static_cast<Step>(step)));
      for (std::size_t other = 0; other < kAlters; ++other) {
        if (other != alter) signs += counts_[step][other];
      }
    }
    return signs;
  }

 private:
  /// From two flats to two sharps.
  static std::size_t place_of(std::int8_t alter) {
    constexpr std::int8_t kMost = 2;
    const auto place = std::clamp<std::int8_t>(alter, -kMost, kMost) + kMost;
    return static_cast<std::size_t>(place);
  }

  void add(const Note& note) {
    if (note.held) return;
    ++counts_[static_cast<std::size_t>(note.pitch.step)][place_of(note.pitch.alter)];
  }

  std::array<std::array<std::size_t, kAlters>, kSteps> counts_{};
};

}  // namespace

void set_signs(NotatedHand& hand, KeySignature key) {
  std::vector<NotatedChord*> chords;
  for (NotatedVoice& voice : hand.voices) {
    for (NotatedChord& chord : voice) chords.push_back(&chord);
  }
  std::ranges::stable_sort(chords, {}, &NotatedChord::onset);
  std::map<int, std::int8_t> holds;
  for (NotatedChord* chord : chords) {
    for (NotatedHead& head : chord->heads) {
      if (head.tied_to) continue;
      const int position = letter_position(head.pitch);
      const auto sign = holds.try_emplace(position, alter_in_key(key, head.pitch.step)).first;
      if (sign->second == head.pitch.alter) continue;
      sign->second = head.pitch.alter;
      head.sign = head.pitch.alter;
    }
  }
}

KeySignature key_with_fewest_signs(const Passage& passage) {
  const Letters letters(passage);
  KeySignature best;
  std::size_t fewest = letters.signs_in(best);
  for (int signs = 1; signs <= kMostSigns; ++signs) {
    for (const int fifths : {signs, -signs}) {
      const KeySignature key{static_cast<std::int8_t>(fifths)};
      const std::size_t needed = letters.signs_in(key);
      if (needed >= fewest) continue;
      fewest = needed;
      best = key;
    }
  }
  return best;
}

}  // namespace fingerturn
