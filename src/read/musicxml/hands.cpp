#include "read/musicxml/hands.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace fingerturn {
namespace {

Hand hand_of_staff(std::uint32_t staff) { return staff == 1 ? Hand::right : Hand::left; }

/// How many notes of a voice stand on the staves of each hand.
using NotesByHand = std::array<std::size_t, 2>;

std::vector<NotesByHand> count_notes(const WrittenPart& part) {
  std::vector<NotesByHand> counts(part.voices.size());
  for (const WrittenNote& note : part.notes) {
    ++counts[note.voice].at(static_cast<std::size_t>(hand_of_staff(note.staff)));
  }
  return counts;
}

VoiceHands by_staves(const WrittenPart& part) {
  VoiceHands hands;
  bool visits = false;
  const std::vector<NotesByHand> counts = count_notes(part);
  for (std::size_t voice = 0; voice < counts.size(); ++voice) {
    const auto& [right, left] = counts[voice];
    const bool on_both = right > 0 && left > 0;
    if (on_both && part.voices[voice].doubled) {
      hands.of_voice.emplace_back(std::nullopt);
    } else {
      hands.of_voice.emplace_back(right >= left ? Hand::right : Hand::left);
      visits |= on_both;
    }
  }
  hands.remark = part.staff_count > 2
                     ? "The first staff was taken as the right hand, the others as the left."
                     : "The upper staff was taken as the right hand, the lower as the left.";
  if (visits) {
    hands.remark += " A voice on both stays with the hand of the staff where it has most notes.";
  }
  return hands;
}

std::string clef_words(ClefSign clef) {
  switch (clef) {
    case ClefSign::g:
      return "G clef";
    case ClefSign::f:
      return "F clef";
    case ClefSign::c:
      return "C clef";
    case ClefSign::percussion:
    case ClefSign::none:
      break;
  }
  return "lack of a clef";
}

VoiceHands by_clef(const WrittenPart& part, ClefSign clef, std::optional<Hand> given) {
  const Hand hand = given.value_or(clef == ClefSign::f ? Hand::left : Hand::right);
  VoiceHands hands{std::vector<std::optional<Hand>>(part.voices.size(), hand), {}};
  hands.remark =
      "The one staff was taken as the " + to_string(hand) + " hand, " +
      (given ? "as asked." : "by its " + clef_words(clef) + "; --hand takes it as the other.");
  return hands;
}

}  // namespace

Hand VoiceHands::of(const WrittenNote& note) const {
  return of_voice[note.voice].value_or(hand_of_staff(note.staff));
}

VoiceHands hands_of(const WrittenPart& part, const PartInfo& info, std::optional<Hand> given) {
  if (part.staff_count > 1) return by_staves(part);
  return by_clef(part, info.clef, given);
}

}  // namespace fingerturn
