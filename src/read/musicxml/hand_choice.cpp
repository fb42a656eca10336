#include "read/musicxml/hand_choice.hpp"

#include "read/musicxml/beat_groups.hpp"
#include "read/musicxml/signed_notes.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <span>
#include <utility>

namespace fingerturn {
namespace {

/// What fingers 1 and 5 span in practice, and what nobody takes, in semitones.
constexpr int kPracticalSpan = 15;
constexpr int kNobodysSpan = 20;

std::size_t place_of(Hand hand) { return static_cast<std::size_t>(hand); }
Hand other_than(Hand hand) { return hand == Hand::right ? Hand::left : Hand::right; }
int key_of(const WrittenNote& note) { return midi_number(note.note.pitch); }

/// The lowest and the highest of some keys.
struct Keys {
  int lowest = kNobodysSpan * kNobodysSpan;
  int highest = 0;

  void add(int key) {
    lowest = std::min(lowest, key);
    highest = std::max(highest, key);
  }
  [[nodiscard]] int span() const { return std::max(highest - lowest, 0); }
};

/// What a voice does in the measure at hand.
struct VoiceInMeasure {
  MomentsByHand notes{};
  Ticks end = 0;
  std::optional<std::uint32_t> main;  ///< the last note that was come to, from the end
  /// It plays two things at a time, and so is really two voices of one name, one on each staff.
  bool doubled = false;

  [[nodiscard]] bool is_on_both() const { return !doubled && notes[0] > 0 && notes[1] > 0; }
};

using Places = std::span<const std::uint32_t>;

class Choice {
 public:
  Choice(WrittenPart& part, std::optional<Hand> only)
      : part_(part),
        only_(only),
        groups_(beat_groups(part, [only](const WrittenNote& note) { return home(note, only); })),
        signed_(hands_by_signs(part)),
        voices_(part.voice_count) {
    for (auto& ends : tied_until_) ends.fill(-1);
  }

  HandsByOther choose() {
    std::uint32_t begin = 0;
    const auto count = static_cast<std::uint32_t>(part_.notes.size());
    for (std::size_t i = 0; i < part_.measures.size(); ++i) {
      std::uint32_t end = begin;
      while (end < count && part_.notes[end].measure == i) ++end;
      choose_in_measure(begin, end);
      start_ += part_.measures[i].length;
      begin = end;
    }
    return std::move(other_);
  }

 private:
  static Hand home(const WrittenNote& note, std::optional<Hand> only) {
    return only.value_or(note.staff == 1 ? Hand::right : Hand::left);
  }
  [[nodiscard]] Hand home(const WrittenNote& note) const { return home(note, only_); }

  void choose_in_measure(std::uint32_t begin, std::uint32_t end) {
    for (std::uint32_t i = begin; i < end; ++i) voices_[part_.notes[i].voice] = {};
    std::vector<std::uint32_t> struck;
    for (std::uint32_t i = begin; i < end; ++i) {
      if (part_.notes[i].grace) continue;
      look_at(part_.notes[i]);
      struck.push_back(i);
    }
    std::stable_sort(struck.begin(), struck.end(), [this](std::uint32_t left, std::uint32_t right) {
      return part_.notes[left].tick < part_.notes[right].tick;
    });
    const auto is_later = [this](Ticks tick, std::uint32_t place) {
      return tick < part_.notes[place].tick;
    };
    for (auto moment = struck.begin(); moment != struck.end();) {
      const auto next = std::upper_bound(moment, struck.end(), part_.notes[*moment].tick, is_later);
      choose_at_moment(Places(moment, next));
      moment = next;
    }
    choose_for_grace_notes(begin, end);
  }

  void look_at(const WrittenNote& note) {
    VoiceInMeasure& voice = voices_[note.voice];
    ++voice.notes.at(place_of(home(note)));
    if (note.in_chord) return;
    voice.doubled |= note.tick < voice.end;
    voice.end = note.tick + note.duration;
  }

  /// The hand of the voice, where the note stands on the other hand's staff.
  [[nodiscard]] bool visits(std::uint32_t place) const {
    const WrittenNote& note = part_.notes[place];
    const VoiceInMeasure& voice = voices_[note.voice];
    if (voice.doubled) return false;
    std::optional<Hand> own = hand_with_most(groups_.groups[groups_.of_note[place]]);
    if (!own) own = hand_with_most(voice.notes);
    return own && *own != home(note);
  }

  void choose_at_moment(Places moment) {
    keys_ = {};
    std::vector<std::uint32_t> visitors;
    for (const std::uint32_t place : moment) {
      WrittenNote& note = part_.notes[place];
      note.hand = home(note);
      if (take_continuation(note)) continue;
      if (signed_[place]) {
        note.hand = *signed_[place];
        if (note.hand != home(note)) other_.signs.push_back(bar_of(note));
      } else if (visits(place)) {
        visitors.push_back(place);
        continue;
      }
      add_key(note);
    }
    for (auto chord = visitors.begin(); chord != visitors.end();) {
      const auto next = std::find_if(chord, visitors.end(), [&](std::uint32_t place) {
        return part_.notes[place].voice != part_.notes[*chord].voice;
      });
      choose_for_visitors(Places(chord, next));
      chord = next;
    }
    if (!only_) {
      for (const Hand hand : {Hand::left, Hand::right}) divide(moment, hand);
    }
    for (const std::uint32_t place : moment) note_tie(part_.notes[place]);
  }

  /// What is rolled need not be taken at once.
  void add_key(const WrittenNote& note) {
    if (!note.rolled) keys_.at(place_of(note.hand)).add(key_of(note));
  }

  /// Notes of one voice on the other staff: its own hand has them where it can take all.
  void choose_for_visitors(Places chord) {
    const Hand own = other_than(home(part_.notes[chord.front()]));
    Keys keys = keys_.at(place_of(own));
    for (const std::uint32_t place : chord) {
      if (!part_.notes[place].rolled) keys.add(key_of(part_.notes[place]));
    }
    const bool stays = keys.span() <= kPracticalSpan;
    for (const std::uint32_t place : chord) {
      WrittenNote& note = part_.notes[place];
      if (stays) {
        note.hand = own;
        other_.visits.push_back(bar_of(note));
      }
      add_key(note);
    }
  }

  /// What the hand would strike at once and no hand takes, the other hand gets a share of, where
  /// it can take that.
  void divide(Places moment, Hand hand) {
    if (keys_.at(place_of(hand)).span() <= kPracticalSpan) return;
    std::vector<std::uint32_t> nearest;  // to the other hand, first
    for (const std::uint32_t place : moment) {
      const WrittenNote& note = part_.notes[place];
      if (note.hand == hand && !note.continues && !note.rolled) nearest.push_back(place);
    }
    std::stable_sort(nearest.begin(), nearest.end(), [&](std::uint32_t one, std::uint32_t two) {
      const int first = key_of(part_.notes[one]);
      const int second = key_of(part_.notes[two]);
      return hand == Hand::left ? first > second : first < second;
    });
    const std::size_t share = share_of_other(nearest, hand);
    for (std::size_t i = 0; i < share; ++i) {
      WrittenNote& note = part_.notes[nearest[i]];
      note.hand = other_than(hand);
      if (note.hand != home(note)) other_.reaches.push_back(bar_of(note));
      add_key(note);
    }
  }

  /// How many of the notes the other hand gets.
  [[nodiscard]] std::size_t share_of_other(Places nearest, Hand hand) const {
    const int last = key_of(part_.notes[nearest.back()]);
    const int span = std::abs(key_of(part_.notes[nearest.front()]) - last);
    // A wide chord of one voice stays with its hand, unless the voice is the other hand's as well.
    const std::uint32_t voice = part_.notes[nearest.front()].voice;
    const bool is_one_chord =
        voice == part_.notes[nearest.back()].voice && !voices_[voice].is_on_both();
    if (span < kNobodysSpan && is_one_chord) return 0;
    Keys other = keys_.at(place_of(other_than(hand)));
    std::size_t share = 0;
    for (std::size_t i = 0; i + 1 < nearest.size(); ++i) {
      if (signed_[nearest[i]]) break;
      other.add(key_of(part_.notes[nearest[i]]));
      if (other.span() > kPracticalSpan) break;
      const int rest = std::abs(key_of(part_.notes[nearest[i + 1]]) - last);
      if (rest <= kPracticalSpan) return i + 1;
      if (share == 0 && rest < kNobodysSpan && span >= kNobodysSpan) share = i + 1;
    }
    return share;
  }

  bool take_continuation(WrittenNote& note) {
    const Ticks now = start_ + note.tick;
    for (const Hand hand : {note.hand, other_than(note.hand)}) {
      Ticks& until = tied_until_.at(place_of(hand)).at(static_cast<std::size_t>(key_of(note)));
      if (until != now) continue;
      until = -1;
      note.hand = hand;
      note.continues = true;
      return true;
    }
    return false;
  }

  void note_tie(const WrittenNote& note) {
    if (!note.note.tied) return;
    tied_until_.at(place_of(note.hand)).at(static_cast<std::size_t>(key_of(note))) =
        start_ + note.tick + note.duration;
  }

  /// Grace notes go with the note of their voice that they lead to.
  void choose_for_grace_notes(std::uint32_t begin, std::uint32_t end) {
    for (std::uint32_t i = end; i > begin; --i) {
      WrittenNote& note = part_.notes[i - 1];
      std::optional<std::uint32_t>& main = voices_[note.voice].main;
      if (!note.grace) {
        main = i - 1;
      } else if (signed_[i - 1]) {
        note.hand = *signed_[i - 1];
      } else {
        const bool leads_on = main && part_.notes[*main].staff == note.staff;
        note.hand = leads_on ? part_.notes[*main].hand : home(note);
      }
    }
  }

  [[nodiscard]] std::int32_t bar_of(const WrittenNote& note) const {
    return part_.measures[note.measure].bar;
  }

  static constexpr std::size_t kKeys = 128;

  WrittenPart& part_;
  std::optional<Hand> only_;
  BeatGroups groups_;
  std::vector<std::optional<Hand>> signed_;  ///< what the score says of each note
  std::vector<VoiceInMeasure> voices_;
  std::array<Keys, 2> keys_{};                            ///< struck now, by hand
  std::array<std::array<Ticks, kKeys>, 2> tied_until_{};  ///< by hand and key
  Ticks start_ = 0;                                       ///< of the measure
  HandsByOther other_;
};

}  // namespace

HandsByOther choose_hands(WrittenPart& part, std::optional<Hand> only) {
  return Choice(part, only).choose();
}

}  // namespace fingerturn
