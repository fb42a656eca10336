#include "rules/random_passage.hpp"

#include "rules/made_lines.hpp"
#include "score/ties.hpp"

#include <algorithm>
#include <cstdlib>
#include <string>
#include <utility>

namespace fingerturn {
namespace {

class LineByChance {
 public:
  LineByChance(Chance& chance, Hand hand) : chance_(chance) { line_.hand = hand; }

  Line make(std::size_t events) {
    while (line_.events.size() < events) add_event();
    resolve_ties(line_);
    return std::move(line_);
  }

 private:
  void add_event() {
    Event event;
    if (chance_.percent(20)) ++bar_;
    if (chance_.percent(2)) bar_ += 2;
    event.bar = bar_;
    event.grace = chance_.percent(5);
    event.breath_after = chance_.percent(4);
    const bool continues = chance_.percent(15) && continue_note(event);
    const bool strikes = !continues || chance_.percent(30);
    if (strikes && !chance_.percent(5)) strike(event);
    std::sort(event.notes.begin(), event.notes.end(), [](const Note& lower, const Note& higher) {
      return midi_number(lower.pitch) < midi_number(higher.pitch);
    });
    line_.events.push_back(std::move(event));
  }

  /// Ties a note of one of the last two events to one in this event; false where there is none.
  bool continue_note(Event& event) {
    const std::size_t back = chance_.percent(70) ? 1 : 2;
    if (line_.events.size() < back) return false;
    std::vector<Note>& notes = line_.events[line_.events.size() - back].notes;
    for (Note& note : notes) {
      if (!event.notes.empty() && chance_.percent(50)) continue;
      note.tied = true;
      event.notes.push_back(note_on(midi_number(note.pitch), any_finger(40)));
    }
    return !event.notes.empty();
  }

  void strike(Event& event) {
    const int kind = chance_.between(1, 100);
    const int count = kind <= 75 ? 1 : kind <= 92 ? 2 : chance_.between(3, 4);
    key_ = std::clamp(key_ + chance_.between(-5, 5), kLowestRandomKey, kHighestRandomKey);
    int key = key_;
    for (int note = 0; note < count; ++note) {
      add_note(event, key);
      key += chance_.between(1, 4);
    }
  }

  void add_note(Event& event, int key) {
    const bool taken = std::any_of(event.notes.begin(), event.notes.end(), [key](const Note& note) {
      return midi_number(note.pitch) == key;
    });
    if (taken || key > kHighestRandomKey) return;
    Note note = note_on(key, any_finger(8));
    while (note.finger && chance_.percent(10)) {
      note.changes_to.push_back(static_cast<Finger>(chance_.between(1, 5)));
    }
    event.notes.push_back(std::move(note));
  }

  int any_finger(int percent_missing) {
    return chance_.percent(percent_missing) ? kNoFinger : chance_.between(1, 5);
  }

  Chance& chance_;
  Line line_;
  int key_ = 62;
  std::int32_t bar_ = 1;
};

}  // namespace

std::uint64_t seed_of_this_run() {
  const char* given = std::getenv(kSeedVariable);
  if (given != nullptr) return std::stoull(given);
  return std::random_device{}();
}

Line random_line(Chance& chance, Hand hand, std::size_t events) {
  return LineByChance(chance, hand).make(events);
}

Score random_score(Chance& chance, std::size_t events) {
  Line right = random_line(chance, Hand::right, events);
  Line left = random_line(chance, Hand::left, events);
  return score_of({std::move(right), std::move(left)});
}

}  // namespace fingerturn
