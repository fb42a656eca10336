#include "write/partwise/clefs.hpp"

#include "fingerturn/pitch.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

/// The lowest and highest position of a bar, or of the lines of a staff.
struct Positions {
  int lowest = 0;
  int highest = 0;
};

constexpr Positions lines_of(Clef clef) {
  return clef == Clef::g ? Positions{30, 38} : Positions{18, 26};  // E4 to F5, G2 to A3
}

std::optional<Positions> positions_in(const NotatedHand& hand) {
  std::optional<Positions> found;
  for (const NotatedVoice& voice : hand.voices) {
    for (const NotatedChord& chord : voice) {
      for (const NotatedHead& head : chord.heads) {
        const int position = letter_position(head.pitch);
        if (!found) found = Positions{position, position};
        found->lowest = std::min(found->lowest, position);
        found->highest = std::max(found->highest, position);
      }
    }
  }
  return found;
}

/// How far notes stand outside of the lines, below and above.
int outside(Positions notes, Clef clef) {
  const Positions lines = lines_of(clef);
  return std::max(0, lines.lowest - notes.lowest) + std::max(0, notes.highest - lines.highest);
}

Clef clef_of(Hand hand) { return hand == Hand::right ? Clef::g : Clef::f; }

}  // namespace

Clefs::Clefs(const std::vector<Hand>& hands) {
  for (const Hand hand : hands) staves_.push_back({hand});
}

std::optional<Clef> Clefs::change(std::size_t staff, const NotatedHand& hand) {
  constexpr int kThreeLedgerLines = 6;
  Staff& of = staves_[staff];
  const bool is_first = !of.clef;
  const Clef now = of.clef.value_or(clef_of(of.hand));
  const Clef other = now == Clef::g ? Clef::f : Clef::g;
  const std::optional<Positions> notes = positions_in(hand);
  const bool must_stay = is_first && staves_.size() == 1;
  const bool changes =
      notes && !must_stay && outside(*notes, now) > outside(*notes, other) + kThreeLedgerLines;
  of.clef = changes ? other : now;
  return is_first || changes ? of.clef : std::nullopt;
}

}  // namespace fingerturn
