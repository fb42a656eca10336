#include "read/musicxml/signed_notes.hpp"

#include <algorithm>
#include <cstddef>
#include <map>

namespace fingerturn {
namespace {

struct SignedVoice {
  Ticks end = 0;  ///< from the beginning of the part: up to where it sounds
  std::uint32_t staff = 0;
  std::optional<Hand> hand;
};

class Signs {
 public:
  explicit Signs(const WrittenPart& part) : part_(part), voices_(part.voice_count) {}

  std::vector<std::optional<Hand>> read() {
    std::vector<std::optional<Hand>> hands;
    hands.reserve(part_.notes.size());
    std::uint32_t measure = 0;
    for (const WrittenNote& note : part_.notes) {
      for (; measure < note.measure; ++measure) start_ += part_.measures[measure].length;
      take_signs(hands.size(), note);
      hands.push_back(hand_of(note));
    }
    return hands;
  }

 private:
  /// The signs that stand between the note before and this one.
  void take_signs(std::size_t place, const WrittenNote& note) {
    for (; next_ < part_.hand_signs.size() && part_.hand_signs[next_].note <= place; ++next_) {
      const HandSign& sign = part_.hand_signs[next_];
      waiting_[sign.staff == 0 ? note.staff : sign.staff] = sign.hand;
    }
  }

  std::optional<Hand> hand_of(const WrittenNote& note) {
    SignedVoice& voice = voices_[note.voice];
    const Ticks now = start_ + note.tick;
    if (now > voice.end || note.staff != voice.staff) voice.hand.reset();
    voice.staff = note.staff;
    if (!note.grace) voice.end = std::max(voice.end, now + note.duration);
    if (const auto sign = waiting_.find(note.staff); sign != waiting_.end()) {
      voice.hand = sign->second;
      waiting_.erase(sign);
    }
    return voice.hand;
  }

  const WrittenPart& part_;
  std::vector<SignedVoice> voices_;
  std::map<std::uint32_t, Hand> waiting_;  ///< by staff, signs that have not met a note
  std::size_t next_ = 0;
  Ticks start_ = 0;  ///< of the measure
};

}  // namespace

std::vector<std::optional<Hand>> hands_by_signs(const WrittenPart& part) {
  return Signs(part).read();
}

}  // namespace fingerturn
