#include "rules/watch/hands.hpp"

#include "rules/watch/watch_list.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdlib>
#include <optional>
#include <string>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// A key that is down.
struct Down {
  Pitch pitch;
  int key = 0;
  Fraction until;
};

/// Goes through the events of one hand in time.
class HandInTime {
 public:
  HandInTime(const Line& line, LineAnalysis& analysis) : line_(line), analysis_(analysis) {
    skip();
  }

  [[nodiscard]] bool at_end() const { return next_ == line_.events.size(); }
  [[nodiscard]] Fraction onset() const { return *line_.events[next_].onset; }
  [[nodiscard]] Hand hand() const { return line_.hand; }
  [[nodiscard]] const std::vector<Down>& down() const { return down_; }
  [[nodiscard]] const Event& event() const { return line_.events[now_]; }
  [[nodiscard]] bool strikes() const { return strikes_; }
  /// How far, in semitones, the hand has come to what it strikes now from what it struck before.
  [[nodiscard]] int come() const { return come_; }

  /// Takes the hand to a time: what it strikes then, and what it has down still.
  void go_to(Fraction time) {
    strikes_ = false;
    std::erase_if(down_, [&](const Down& down) { return down.until <= time; });
    for (; !at_end() && onset() == time; ++next_, skip()) take(line_.events[next_]);
  }

  /// What the hands can be told of, each once for a bar.
  enum class Topic : std::uint8_t { same_key, past };

  /// Says something of what is struck now.
  void tell(Topic topic, std::string message) {
    std::optional<std::int32_t>& last_bar = told_.at(static_cast<std::size_t>(topic));
    if (last_bar == event().bar) return;
    last_bar = event().bar;
    const auto entry = std::ranges::lower_bound(analysis_.events, now_, {}, &EventAnalysis::event);
    analysis_.watch.push_back(
        {kHandsRule.id, WatchLevel::info, now_, entry->index, std::move(message)});
  }

 private:
  void skip() {
    const auto is_timed = [](const Event& event) { return event.onset && event.duration; };
    while (!at_end() && !is_timed(line_.events[next_])) ++next_;
  }

  void take(const Event& event) {
    if (event.is_rest()) return down_.clear();
    const std::optional<Fraction> end = sum(*event.onset, *event.duration);
    for (const Note& note : event.notes) {
      const std::optional<Fraction> until = note.lasts ? sum(*event.onset, *note.lasts) : end;
      if (until) down_.push_back({note.pitch, midi_number(note.pitch), *until});
    }
    if (event.struck_count() == 0) return;
    strikes_ = true;
    now_ = next_;
    const int key = midi_number(event.notes.front().pitch);
    come_ = std::abs(key - key_.value_or(key));
    key_ = key;
  }

  const Line& line_;
  LineAnalysis& analysis_;
  std::size_t next_ = 0;
  std::size_t now_ = 0;  ///< what is struck, where something is
  bool strikes_ = false;
  std::optional<int> key_;  ///< the lowest of what was struck last
  int come_ = 0;
  std::vector<Down> down_;
  std::array<std::optional<std::int32_t>, 2> told_;  ///< by Topic, the last bar
};

/// The first struck key of the one hand that the other has down too.
const Note* shared_key(const Event& struck, const std::vector<Down>& other) {
  for (const Note& note : struck.notes) {
    const int key = midi_number(note.pitch);
    const bool shared =
        !note.held && std::ranges::any_of(other, [&](const Down& down) { return down.key == key; });
    if (shared) return &note;
  }
  return nullptr;
}

/// The struck note that lies beyond all keys of the other hand, on that hand's far side.
const Note* note_past(const Event& struck, Hand hand, const std::vector<Down>& other) {
  for (const Note& note : struck.notes) {
    if (note.held) continue;
    const int key = midi_number(note.pitch);
    const bool past = std::ranges::all_of(other, [&](const Down& down) {
      return hand == Hand::right ? key < down.key : key > down.key;
    });
    if (past) return &note;
  }
  return nullptr;
}

void tell_past(HandInTime& reaching, const HandInTime& passed, const Note& far) {
  reaching.tell(HandInTime::Topic::past,
                fmt::format("The {} hand reaches past the {} to {}.", to_string(reaching.hand()),
                            to_string(passed.hand()), to_string(far.pitch)));
}

/// Where both strike, what is said of them is said of one: of the one that came from further away.
void look(HandInTime& striking, HandInTime& other) {
  if (!striking.strikes() || other.down().empty()) return;
  if (const Note* note = shared_key(striking.event(), other.down())) {
    return striking.tell(HandInTime::Topic::same_key,
                         fmt::format("Both hands are on {}.", to_string(note->pitch)));
  }
  const Note* far = note_past(striking.event(), striking.hand(), other.down());
  if (far == nullptr) return;
  const bool other_came = other.strikes() && other.come() > striking.come();
  const Note* others =
      other_came ? note_past(other.event(), other.hand(), striking.down()) : nullptr;
  others != nullptr ? tell_past(other, striking, *others) : tell_past(striking, other, *far);
}

}  // namespace

void find_hands(const Passage& passage, PassageAnalysis& analysis) {
  if (passage.lines.size() != 2) return;
  HandInTime right(passage.lines[0], analysis.lines[0]);
  HandInTime left(passage.lines[1], analysis.lines[1]);
  while (!right.at_end() || !left.at_end()) {
    const bool right_first = left.at_end() || (!right.at_end() && right.onset() <= left.onset());
    const Fraction time = right_first ? right.onset() : left.onset();
    right.go_to(time);
    left.go_to(time);
    look(right, left);
    if (!right.strikes()) look(left, right);
  }
  for (LineAnalysis& line : analysis.lines) put_in_order(line.watch);
}

}  // namespace fingerturn
