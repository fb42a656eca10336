#pragma once

#include "fingerturn/analysis.hpp"
#include "fingerturn/rule.hpp"

#include <cstddef>
#include <vector>

namespace fingerturn {

inline constexpr Rule kHeldKeyRule{
    "held-key", "2.9", "Held keys",
    "Where a hand strikes while it keeps another key down, by a tie or in a slower voice, the "
    "report "
    "names the key and, where it is known, the finger that holds it. The hand is pinned there: the "
    "kind stands, but no swing around a held key can be full, so the event is left out of the "
    "swing "
    "rate and of the tempo of full swings (6). A key that is 20 semitones or more from one that is "
    "struck, or whose finger strikes another, is no longer held by the hand: the pedal may keep "
    "it.",
    "Our convention."};

/// Rule 2.9: goes through the events of a line and knows which keys are down.
class HeldKeys {
 public:
  explicit HeldKeys(const Line& line) : line_(line) {}

  /// Goes on to an event, which stands after those before, and adds the keys that are held while it
  /// is struck. False where none are, or nothing is struck.
  bool go_to(std::size_t event, std::vector<HeldKey>& held);

 private:
  /// A key that is down.
  struct Down {
    Pitch pitch;
    std::optional<Finger> finger;
    std::optional<Fraction> until;  ///< none where that is not known
    bool tied = false;              ///< until its continuation, whenever that comes
  };

  void pass(const Event& event);
  void let_go(const Event& event);
  void take(const Event& event, const Note& note);
  void forget(const Pitch& pitch);
  [[nodiscard]] Down* find(const Pitch& pitch);

  const Line& line_;
  std::size_t next_ = 0;
  std::vector<Down> down_;
};

}  // namespace fingerturn
