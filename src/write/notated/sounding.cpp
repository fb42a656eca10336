#include "write/notated/sounding.hpp"

#include <algorithm>
#include <cstdlib>
#include <iterator>
#include <map>
#include <utility>

namespace fingerturn {
namespace {

/// What begins together, by its end.
using Chords = std::map<Ticks, std::vector<Sounding>>;

int middle_of(const std::vector<Sounding>& chord) {
  int sum = 0;
  for (const Sounding& head : chord) sum += midi_number(head.pitch);
  return sum / static_cast<int>(chord.size());
}

class Voices {
 public:
  explicit Voices(const std::vector<Sounding>& sounding) {
    for (const Sounding& head : sounding) waiting_.emplace(head.onset, head);
  }

  NotatedHand take() {
    while (!waiting_.empty()) add_moment();
    return std::move(hand_);
  }

 private:
  [[nodiscard]] bool is_free(std::size_t voice, Ticks at) const {
    return sounding_[voice].empty() || sounding_[voice].front().end <= at;
  }

  void add_moment() {
    const Ticks now = waiting_.begin()->first;
    Chords chords;
    const auto after = waiting_.upper_bound(now);
    for (auto head = waiting_.begin(); head != after; ++head) {
      chords[head->second.end].push_back(head->second);
    }
    waiting_.erase(waiting_.begin(), after);
    make_room(now, chords);
    if (chords.size() == 2) {
      const bool longer_is_higher =
          middle_of(chords.rbegin()->second) > middle_of(chords.begin()->second);
      begin(longer_is_higher ? 0 : 1, now, chords.rbegin()->second);
      begin(longer_is_higher ? 1 : 0, now, chords.begin()->second);
    } else {
      std::vector<Sounding>& chord = chords.begin()->second;
      begin(voice_for(now, chord), now, chord);
    }
  }

  /// Leaves no more chords than there are voices to take them.
  void make_room(Ticks now, Chords& chords) {
    const bool none_free = !is_free(0, now) && !is_free(1, now);
    if (none_free) cut(nearest_to(chords.begin()->second), now, chords);
    const std::size_t free = (is_free(0, now) ? 1U : 0U) + (is_free(1, now) ? 1U : 0U);
    while (chords.size() > free) join_longest(chords);
  }

  [[nodiscard]] std::size_t nearest_to(const std::vector<Sounding>& chord) const {
    const int middle = middle_of(chord);
    return std::abs(middle_of(sounding_[1]) - middle) < std::abs(middle_of(sounding_[0]) - middle)
               ? 1
               : 0;
  }

  /// Ends the chord of a voice now; its heads are tied to new ones.
  void cut(std::size_t voice, Ticks now, Chords& chords) {
    NotatedChord& chord = hand_.voices[voice].back();
    chord.length = now - chord.onset;
    for (NotatedHead& head : chord.heads) head.tied_on = true;
    for (Sounding& head : sounding_[voice]) {
      head.onset = now;
      head.tied_to = true;
      chords[head.end].push_back(head);
    }
    sounding_[voice].clear();
  }

  /// Makes one chord of the two that last longest; what lasts longer is tied on.
  void join_longest(Chords& chords) {
    const auto longest = std::prev(chords.end());
    std::vector<Sounding>& shorter = std::prev(longest)->second;
    for (Sounding head : longest->second) {
      Sounding rest = head;
      rest.onset = std::prev(longest)->first;
      rest.tied_to = true;
      waiting_.emplace(rest.onset, rest);
      head.end = rest.onset;
      head.tied_on = true;
      shorter.push_back(head);
    }
    chords.erase(longest);
  }

  /// The voice for what begins alone: the upper, but for what is held below what comes.
  [[nodiscard]] std::size_t voice_for(Ticks now, const std::vector<Sounding>& chord) const {
    if (!is_free(0, now)) return 1;
    if (!is_free(1, now) || waiting_.empty()) return 0;
    const auto next = waiting_.begin();
    if (next->first >= chord.front().end) return 0;
    return middle_of(chord) < midi_number(next->second.pitch) ? 1 : 0;
  }

  void begin(std::size_t voice, Ticks now, std::vector<Sounding>& chord) {
    std::ranges::sort(chord, {}, [](const Sounding& head) { return midi_number(head.pitch); });
    NotatedChord& written = hand_.voices[voice].emplace_back();
    written.event = chord.front().place.event;
    written.onset = now;
    written.length = chord.front().end - now;
    for (const Sounding& head : chord) {
      written.heads.push_back({head.place, head.pitch, {}, head.tied_to, head.tied_on});
    }
    sounding_[voice] = std::move(chord);
  }

  std::multimap<Ticks, Sounding> waiting_;
  std::array<std::vector<Sounding>, 2> sounding_;
  NotatedHand hand_;
};

}  // namespace

NotatedHand voices_of(const std::vector<Sounding>& sounding) { return Voices(sounding).take(); }

}  // namespace fingerturn
