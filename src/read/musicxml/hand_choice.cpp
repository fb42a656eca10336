#include "read/musicxml/hand_choice.hpp"

#include "read/musicxml/beat_groups.hpp"
#include "read/musicxml/reach.hpp"
#include "read/musicxml/signed_notes.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <span>
#include <utility>

namespace fingerturn {
namespace {

std::size_t place_of(Hand hand) { return static_cast<std::size_t>(hand); }
Hand other_than(Hand hand) { return hand == Hand::right ? Hand::left : Hand::right; }
int key_of(const WrittenNote& note) { return midi_number(note.note.pitch); }

/// The beat group of a voice in which the hand of its staff has left it to the other hand.
struct LeftToOther {
  std::size_t group = 0;
  Hand hand = Hand::right;
};

/// What a voice does in the measure at hand.
struct VoiceInMeasure {
  MomentsByHand notes{};
  Ticks end = 0;
  std::optional<std::uint32_t> main;  ///< the last note that was come to, from the end
  /// It plays two things at a time, and so is really two voices of one name, one on each staff.
  bool doubled = false;
  std::optional<LeftToOther> left;

  [[nodiscard]] bool is_on_both() const { return !doubled && notes[0] > 0 && notes[1] > 0; }
};

using Places = std::span<const std::uint32_t>;

/// More than this two hands do not strike at once, whatever fingers are printed.
constexpr std::size_t kMostStruck = 24;

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
      for (const Hand hand : {Hand::left, Hand::right}) leave_as_before(moment, hand);
      for (const Hand hand : {Hand::left, Hand::right}) divide(moment, hand);
    }
    for (const std::uint32_t place : moment) note_tie(part_.notes[place]);
  }

  /// What is rolled need not be taken at once.
  void add_key(const WrittenNote& note) {
    if (!note.rolled) keys_.at(place_of(note.hand)).add(key_of(note));
  }

  [[nodiscard]] const VoiceInMeasure& voice_of(std::uint32_t place) const {
    return voices_[part_.notes[place].voice];
  }

  /// Notes of one voice on the other staff: its own hand has them where it can take all, but for
  /// what it would strike together with others while the hand of that staff strikes nothing.
  void choose_for_visitors(Places chord) {
    const Hand there = home(part_.notes[chord.front()]);
    const Hand own = other_than(there);
    Keys keys = keys_.at(place_of(own));
    const bool is_free_there = !keys.none() && keys_.at(place_of(there)).none();
    for (const std::uint32_t place : chord) {
      if (!part_.notes[place].rolled) keys.add(key_of(part_.notes[place]));
    }
    const bool stays = !is_free_there && keys.span() <= kPracticalSpan;
    for (const std::uint32_t place : chord) {
      WrittenNote& note = part_.notes[place];
      if (stays) {
        note.hand = own;
        other_.visits.push_back(bar_of(note));
      }
      add_key(note);
    }
  }

  [[nodiscard]] std::vector<std::uint32_t> struck_by(Hand hand, Places moment) const {
    std::vector<std::uint32_t> struck;
    for (const std::uint32_t place : moment) {
      const WrittenNote& note = part_.notes[place];
      if (note.hand == hand && !note.continues && !note.rolled) struck.push_back(place);
    }
    return struck;
  }

  /// What a hand strikes at the moment, what is nearest to the other hand first.
  [[nodiscard]] std::vector<std::uint32_t> nearest_to_other(Places moment, Hand hand) const {
    std::vector<std::uint32_t> nearest = struck_by(hand, moment);
    if (nearest.size() < 2) return nearest;  // as mostly; sorting would take memory even so
    std::stable_sort(nearest.begin(), nearest.end(), [&](std::uint32_t one, std::uint32_t two) {
      const int first = key_of(part_.notes[one]);
      const int second = key_of(part_.notes[two]);
      return hand == Hand::left ? first > second : first < second;
    });
    return nearest;
  }

  void leave_to_other(std::uint32_t place) {
    WrittenNote& note = part_.notes[place];
    note.hand = other_than(note.hand);
    if (note.hand != home(note)) other_.reaches.push_back(bar_of(note));
    voices_[note.voice].left = {groups_.of_note[place], note.hand};
    add_key(note);
  }

  /// A voice of which the other hand has got something stays there to the end of its beat group,
  /// and while that hand strikes nothing else to the end of the measure, where it can take it.
  void leave_as_before(Places moment, Hand hand) {
    const bool any_left = std::ranges::any_of(
        moment, [this](std::uint32_t place) { return voice_of(place).left.has_value(); });
    if (!any_left) return;
    for (const std::uint32_t place : nearest_to_other(moment, hand)) {
      const WrittenNote& note = part_.notes[place];
      const std::optional<LeftToOther>& left = voice_of(place).left;
      if (!left || left->hand == hand) continue;
      const bool is_same_group = left->group == groups_.of_note[place];
      if (!is_same_group && !keys_.at(place_of(left->hand)).none()) continue;
      if (signed_[place] || note.hand != home(note) || voice_of(place).is_on_both()) continue;
      if (!can_take(Places(&place, 1), moment, left->hand)) continue;
      leave_to_other(place);
    }
    count_keys(moment, hand);
  }

  void count_keys(Places moment, Hand hand) {
    keys_.at(place_of(hand)) = {};
    for (const std::uint32_t place : struck_by(hand, moment)) add_key(part_.notes[place]);
  }

  /// Whether a hand can take these notes besides its own, by their keys and by printed fingers.
  [[nodiscard]] bool can_take(Places more, Places moment, Hand hand) const {
    Keys keys = keys_.at(place_of(hand));
    for (const std::uint32_t place : more) keys.add(key_of(part_.notes[place]));
    if (keys.span() > kPracticalSpan) return false;
    return moment.size() > kMostStruck || !clash(struck_by(hand, moment), more, hand);
  }

  /// Whether the hand cannot strike one of the notes at once with one of the others, with the
  /// fingers that are printed.
  [[nodiscard]] bool clash(Places notes, Places others, Hand hand) const {
    return std::ranges::any_of(notes, [&](std::uint32_t one) {
      return std::ranges::any_of(others, [&](std::uint32_t other) {
        return one != other && !goes_with(part_.notes[one], part_.notes[other], hand);
      });
    });
  }

  [[nodiscard]] bool goes_with(const WrittenNote& one, const WrittenNote& other, Hand hand) const {
    if (!one.note.finger || !other.note.finger) return true;
    const int width = key_of(other) - key_of(one);
    const bool is_near = (width > 0) == (hand == Hand::right);
    const WrittenNote& near = is_near ? one : other;
    const WrittenNote& far = is_near ? other : one;
    return spans_.is_practical(*near.note.finger, *far.note.finger, std::abs(width));
  }

  /// What the hand would strike at once and no hand takes, the other hand gets a share of, where
  /// it can take that.
  void divide(Places moment, Hand hand) {
    if (moment.size() < 2) return;
    const std::vector<std::uint32_t> nearest = nearest_to_other(moment, hand);
    if (nearest.size() < 2) return;
    const int span = keys_.at(place_of(hand)).span();
    const bool is_wide = span > kPracticalSpan;
    const std::size_t share = is_wide ? whole_chords(nearest, share_of_other(nearest, hand), hand)
                                      : voice_for_idle_hand(nearest, hand);
    if (share == 0) return;
    // What nobody takes is divided whatever fingers are printed.
    const Places left = Places(nearest).first(share);
    if (span < kNobodysSpan && !can_take(left, moment, other_than(hand))) return;
    for (const std::uint32_t place : left) leave_to_other(place);
    count_keys(moment, hand);
  }

  /// A share that does not part the notes of a voice, where the other hand can take them all and
  /// something is left.
  [[nodiscard]] std::size_t whole_chords(Places nearest, std::size_t share, Hand hand) const {
    if (share == 0) return 0;
    Keys other = keys_.at(place_of(other_than(hand)));
    for (const std::uint32_t place : nearest.first(share)) other.add(key_of(part_.notes[place]));
    std::size_t whole = share;
    while (whole < nearest.size() &&
           part_.notes[nearest[whole]].voice == part_.notes[nearest[share - 1]].voice) {
      other.add(key_of(part_.notes[nearest[whole]]));
      if (signed_[nearest[whole]] || other.span() > kPracticalSpan) return share;
      ++whole;
    }
    return whole < nearest.size() ? whole : share;
  }

  /// Two voices of one staff whose printed fingers no hand takes at once, while the other hand
  /// strikes nothing: how many of the notes are of the voice that is nearer to that hand.
  [[nodiscard]] std::size_t voice_for_idle_hand(Places nearest, Hand hand) const {
    if (!keys_.at(place_of(other_than(hand))).none()) return 0;
    if (nearest.size() > kMostStruck) return 0;
    const std::uint32_t voice = part_.notes[nearest.front()].voice;
    const auto is_of_another = [&](std::uint32_t place) {
      return part_.notes[place].voice != voice || signed_[place].has_value();
    };
    const auto end = std::ranges::find_if(nearest, is_of_another);
    const auto count = static_cast<std::size_t>(end - nearest.begin());
    return clash(nearest.first(count), nearest.subspan(count), hand) ? count : 0;
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
  SpanTable spans_{std::nullopt};
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
